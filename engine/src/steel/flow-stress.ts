import type { Law } from './law.ts';

/**
 * Uniaxial hot flow stress, Pa. strain: true compressive strain, from 0. rate: 1/s. T: °C. In plane strain
 * multiply by 1.155. Power laws go to zero with the rate; a caller that can meet zero rate floors it.
 */
export interface FlowStressLaw extends Law {
  /** At this strain, after it has been reached at this rate. */
  readonly stress: (strain: number, rate: number, T: number) => number;
  /** Mean over the way from 0 to this strain: what mean-pressure formulas want. */
  readonly mean: (strain: number, rate: number, T: number) => number;
  /** ∂ ln σ / ∂ ln rate at this rate and temperature. */
  readonly rateExponent: (rate: number, T: number) => number;
}

/** The law times a mill's own factor; its name shows the factor. A factor of 1 changes nothing but is still shown. */
export const calibrated = (law: FlowStressLaw, factor: number): FlowStressLaw => ({
  ...law,
  name: `${law.name} × ${factor.toFixed(3)}`,
  stress: (strain, rate, T) => factor * law.stress(strain, rate, T),
  mean: (strain, rate, T) => factor * law.mean(strain, rate, T),
});

/** The law with the mill's own factor where there is one. */
export const withOwnFactor = (law: FlowStressLaw, factor: number | undefined): FlowStressLaw =>
  factor === undefined ? law : calibrated(law, factor);
