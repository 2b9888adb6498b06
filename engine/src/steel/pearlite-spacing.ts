import type { Law } from './law.ts';

/**
 * Distance between the lamellae, m, of pearlite formed at T, °C: 8.02 µm / (727 − T). From memory, low confidence;
 * 0.30 µm at 700 °C, 0.08 at 627 °C. At and above 727 °C no pearlite forms: infinite.
 */
export const pearliteSpacing = (T: number): number =>
  T < 727 ? 8.02e-6 / (727 - T) : Number.POSITIVE_INFINITY;

/** What the strength of pearlite depends on, m. */
export interface PearliteSize {
  readonly spacing: number;
  readonly colony: number;
  readonly grain: number;
}

/**
 * 0.2 % proof stress of fully pearlitic steel, Pa, after Hyzak and Bernstein 1976 (their lengths are in cm). A power of
 * −1/2 in the spacing is the form a later statistical review found best. Colony and grain defaults are assumed: 6 and 50 µm.
 */
export function pearliteProof({ spacing, colony, grain }: PearliteSize): number {
  const cm = 100;
  const megapascals =
    2.18 / Math.sqrt(spacing * cm) - 0.4 / Math.sqrt(colony * cm) - 2.88 / Math.sqrt(grain * cm) + 52.3;
  return megapascals * 1e6;
}

/** m, assumed where nothing has been measured. */
export const usualPearlite = { colony: 6e-6, grain: 50e-6 } as const;

export const hyzakBernstein: Law = {
  name: 'Hyzak-Bernstein pearlite strength',
  source: 'Hyzak and Bernstein 1976, fully pearlitic eutectoid steel',
  status: 'from memory, unconfirmed',
  validity: { spacing: { low: 0.08, high: 0.35, unit: 'um' } },
};
