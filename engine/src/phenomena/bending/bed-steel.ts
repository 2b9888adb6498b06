import { linear } from '../../numerics/interpolation.ts';
import { thermalStrain } from '../../steel/expansion.ts';
import type { Law } from '../../steel/law.ts';

/** What a fibre does on the cooling bed, by its temperature (°C) and share of pearlite X (0 to 1). Stresses in Pa. */
export interface BedSteel extends Law {
  readonly modulus: (T: number) => number;
  readonly yieldStress: (T: number, X: number) => number;
  /** Slope of stress over plastic strain after first yield; the surface of yield moves along (Prager). */
  readonly hardening: (T: number, X: number) => number;
  /** Free strain from 20 °C. */
  readonly freeStrain: (T: number, X: number) => number;
  /** Strain left by a complete transformation under 1 Pa (Greenwood and Johnson 1965). */
  readonly transformationPlasticity: number;
  /** Share of the hardening memory that a complete transformation wipes out. */
  readonly forgotten: number;
}

/** 5/6 · (ΔV/V) / yield of austenite gives 6 to 10e-11 1/Pa; 7e-11 in the middle of what is reported for pearlite. */
export const transformationPlasticity = 7e-11;

/**
 * By temperature, °C, from memory, unconfirmed. Modulus as measured by vibration, GPa; the factors of EN 1993-1-2 are
 * lower because they hold creep in slow fire tests, and would let the same rail end 2/km more hollow. Yield of pearlite
 * as a share of cold; slow yield of austenite, MPa (60 to 100 at 650 to 700 °C).
 */
const modulusAt = linear(
  [20, 200, 400, 500, 600, 700, 800, 900, 1000],
  [210, 200, 185, 172, 155, 130, 115, 105, 98],
);
const pearliteFactor = linear([20, 200, 300, 400, 500, 600, 700], [1, 0.9, 0.86, 0.8, 0.63, 0.38, 0.21]);
const austeniteYield = linear(
  [400, 500, 600, 700, 800, 900, 1000, 1100],
  [160, 135, 105, 80, 55, 38, 26, 18],
);

/** Rail steel between the last pass and the cold bed; `proof` is its 0.2 % stress at room temperature, Pa. */
export function bedSteel(proof: number): BedSteel {
  return {
    name: 'Rail steel on the cooling bed',
    source: 'handbook-like tables of modulus and yield, phases mixed by the share of pearlite',
    status: 'from memory, unconfirmed',
    validity: { temperature: { low: 20, high: 1100, unit: 'C' } },
    modulus: (T) => 1e9 * modulusAt(T),
    yieldStress: (T, X) => X * proof * pearliteFactor(T) + (1 - X) * 1e6 * austeniteYield(T),
    hardening: (T, X) => X * 6e9 * pearliteFactor(T) + (1 - X) * 1.5e9,
    freeStrain: thermalStrain,
    transformationPlasticity,
    forgotten: 0.7,
  };
}
