import { elasticModulus, yieldFactor } from '../../steel/elastic-modulus.ts';
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

/** °C and MPa: slow yield of austenite; 60 to 100 MPa at 650 to 700 °C, from memory, unconfirmed. */
const austeniteAt = [400, 500, 600, 700, 800, 900, 1000, 1100];
const austeniteYield = [160, 135, 105, 80, 55, 38, 26, 18];

/** Rail steel between the last pass and the cold bed; `proof` is its 0.2 % stress at room temperature, Pa. */
export function bedSteel(proof: number): BedSteel {
  return {
    name: 'Rail steel on the cooling bed',
    source:
      'EN 1993-1-2 factors for pearlite, remembered yields of austenite; mixed by the share of pearlite',
    status: 'from memory, unconfirmed',
    validity: { temperature: { low: 20, high: 1100, unit: 'C' } },
    modulus: elasticModulus,
    yieldStress: (T, X) => X * proof * yieldFactor(T) + (1 - X) * austeniteStress(T),
    hardening: (T, X) => X * 6e9 * Math.max(0.1, yieldFactor(T)) + (1 - X) * 1.5e9,
    freeStrain: thermalStrain,
    transformationPlasticity,
    forgotten: 0.7,
  };
}

function austeniteStress(T: number): number {
  const place = Math.min(7, Math.max(0, (T - austeniteAt[0]) / 100));
  const step = Math.min(6, Math.floor(place));
  const [low, high] = [austeniteYield[step], austeniteYield[step + 1]];
  return 1e6 * (low + (high - low) * (place - step));
}
