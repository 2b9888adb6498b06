import type { FlowSteel } from '../../../phenomena/metal-flow/problem.ts';
import { calibrated, type FlowStressLaw } from '../../../steel/flow-stress.ts';

/**
 * Strain below which a handbook law is not followed: both start from no stress at no strain, where hot steel yields at
 * about half of what it reaches at a strain of 0.2. Assumed, no source.
 */
export const smallestStrain = 0.02;

/** 1/s: the laws are powers of the rate here; further factors above 100 1/s are left out. */
const referenceRate = 10;

/** A flow stress law as the metal-flow model takes it, with the mill's own factor in its name where there is one. */
export function flowSteel(handbook: FlowStressLaw, factor: number | undefined): FlowSteel {
  const law = factor === undefined ? handbook : calibrated(handbook, factor);
  return {
    name: law.name,
    strength: (strain, T) => law.stress(Math.max(strain, smallestStrain), referenceRate, T),
    exponent: (T) => law.rateExponent(referenceRate, T),
    referenceRate,
  };
}
