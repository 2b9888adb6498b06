import type { CellStretch } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/stretch';
import { shades } from './drawn-squares-hatching.ts';

/** What the hatching of a square shows: how far its right angles are off, how slender it is, or how long it grew. */
export type Tint = 'shear' | 'slender' | 'along';

interface TintFacts {
  readonly name: string;
  readonly unit: string;
  readonly of: (stretch: CellStretch) => number;
  /** Smallest step between two shades: below it the flow model itself is not sure. */
  readonly least: number;
}

export const tints: Readonly<Record<Tint, TintFacts>> = {
  shear: {
    name: 'right angle off by',
    unit: '°',
    of: ({ shear }) => Math.abs(shear * 180) / Math.PI,
    least: 1,
  },
  slender: {
    name: 'greater stretch in the section over the smaller',
    unit: '',
    of: ({ principal: [greater, smaller] }) => greater / smaller,
    least: 0.02,
  },
  along: {
    name: 'length along the bar, after over before',
    unit: '',
    of: ({ along }) => along,
    least: 0.01,
  },
};

/** Shade n goes from `bounds[n]` to `bounds[n + 1]`; the last one is as wide as the others. */
export interface TintScale {
  readonly bounds: readonly number[];
  readonly decimals: number;
}

/** Round steps of 1, 2 or 5 that take in all values with the shades there are. No values: one step from 0. */
export function tintScale(values: readonly number[], least: number): TintScale {
  const [low, high] = values.length > 0 ? [Math.min(...values), Math.max(...values)] : [0, 0];
  const step =
    roundSteps(least).find((each) => high < (Math.floor(low / each + slack) + shades) * each) ?? high;
  const first = Math.floor(low / step + slack);
  const count = Math.max(1, Math.ceil(high / step - slack) - first);
  const bounds = Array.from({ length: Math.min(count, shades) + 1 }, (_, n) => (first + n) * step);
  return { bounds, decimals: Math.max(0, Math.ceil(-Math.log10(step) - slack)) };
}

/** Round-off must not open a shade of its own. */
const slack = 1e-9;

function roundSteps(least: number): number[] {
  const decade = 10 ** Math.floor(Math.log10(least) + slack);
  const steps = [0, 1, 2, 3, 4, 5].flatMap((n) => [1, 2, 5].map((digit) => digit * decade * 10 ** n));
  return steps.filter((step) => step >= least * (1 - slack));
}

export const shadeOf = (value: number, { bounds }: TintScale): number =>
  Math.min(shades - 1, Math.max(0, Math.floor((value - bounds[0]) / (bounds[1] - bounds[0]) + slack)));
