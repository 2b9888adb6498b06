import { monotoneCubic } from '../../numerics/interpolation.ts';
import { contactRatio } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';

/**
 * Thick stock: the rolls act as two opposed punches, and the pressure rises as L/h_m falls. Mean pressure over 2k from
 * Hill's slip-line fields, computed from exact theory to four digits; 2.5708 from h_m/L = 8.71 on, where each roll
 * indents for itself (published 8.74, from memory). 1 for L/h_m ≥ 1, where friction takes over.
 */
export const slipLine = fromFactor(
  {
    name: 'Slip line, opposed punches',
    source: "Hill's slip-line field for opposed flat punches",
    status: 'computed from exact theory',
    validity: { [ratioName]: { low: 0.02, high: 1, unit: 'one' } },
  },
  (pass) => opposedPunches(1 / contactRatio(pass)),
);

/** Mean pressure over 2k of two flat punches on a strip, strip height over punch width. */
export const opposedPunches = (heightOverWidth: number): number => punchCurve(heightOverWidth);

/** Mean pressure over 2k of a block flush between perfectly rough platens, block width over height, 1 to 8. */
export const roughPlatens = (widthOverHeight: number): number => platenCurve(widthOverHeight);

/** One punch on a half-space, Prandtl: 1 + π/2. */
export const singlePunch = 1 + Math.PI / 2;

// Up to a fan of 45° (ratio 3.64) both problems have the same field.
const shared = [
  [1, 1],
  [1.25, 1.024],
  [1.5, 1.0768],
  [1.75, 1.1426],
  [2, 1.2138],
  [2.25, 1.2867],
  [2.5, 1.3592],
  [2.75, 1.4303],
  [3, 1.4994],
  [3.25, 1.5662],
  [3.5, 1.6308],
  [3.64, 1.6659],
] as const;

const punches = [...shared, [5, 1.9713], [7, 2.3272], [8, 2.475], [8.5, 2.543], [8.71, singlePunch]] as const;
const platens = [...shared, [4, 1.7562], [5, 2.0115], [6, 2.2662], [6.72, 2.448], [8, 2.7708]] as const;

const punchCurve = through(punches);
const platenCurve = through(platens);

function through(points: readonly (readonly [ratio: number, factor: number])[]): (ratio: number) => number {
  return monotoneCubic(
    points.map(([ratio]) => ratio),
    points.map(([, factor]) => factor),
  );
}
