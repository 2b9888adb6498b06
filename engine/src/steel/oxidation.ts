import { coldDensity } from './expansion.ts';
import type { Law } from './law.ts';
import { gasConstant } from './transformation.ts';

/** Growth of the scale layer: thickness² grows by `rate(T)` per second. All in SI, T in °C. */
export interface ScaleLaw extends Law {
  /** m²/s. */
  readonly rate: (T: number) => number;
  /** Scale thickness, m, after dt seconds at T; steps may be of any length while T is held. */
  readonly grown: (scale: number, T: number, dt: number) => number;
}

/**
 * Iron and low-carbon steel in air: thickness² = k t, k = 6.1 exp(−169 450/RT) cm²/s (2.08 mm after 2 h at 1200 °C).
 * One published test found only several hundred µm after 2 h at 1100 to 1250 °C, which contradicts it, probably by
 * scale that fell off: calibrate `thicknessFactor` to the mill's scale loss. Rate is carried on outside 700 to 1250 °C.
 *
 * thicknessFactor   multiplies the thickness that forms; see `furnaceGas`.
 */
export function scaleLaw(thicknessFactor = 1): ScaleLaw {
  const rate = (T: number) =>
    thicknessFactor ** 2 * inAir * Math.exp(-activation / (gasConstant * (T + 273.15)));
  return {
    name:
      thicknessFactor === 1 ? 'Parabolic scaling in air' : `Parabolic scaling in air × ${thicknessFactor}`,
    source: 'parabolic law for iron and low-carbon steel in air or oxygen',
    status: 'from memory, unconfirmed',
    validity: { temperature: { low: 700, high: 1250, unit: 'C' } },
    rate,
    grown: (scale, T, dt) => Math.sqrt(scale * scale + rate(T) * dt),
  };
}

/** m²/s and J/mol. */
const inAir = 6.1e-4;
const activation = 169_450;

/** Scale in gas with 1 to 3 % oxygen over scale in air: 0.5 to 0.7, from memory, low confidence. */
export const furnaceGas = 0.6;

/** kg/m³, porous furnace scale, and the share of it that is iron. */
export const scaleDensity = 5600;
export const ironShare = 0.76;

/** Iron lost to scale, kg/m²: 4.3 for each mm of scale. */
export const metalLoss = (scale: number): number => scaleDensity * ironShare * scale;

/** How far the steel's surface has receded, m, cold: 0.54 of the scale's thickness. */
export const metalRecession = (scale: number): number => metalLoss(scale) / coldDensity;
