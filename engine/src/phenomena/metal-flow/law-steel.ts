import type { FlowStressLaw } from '../../steel/flow-stress.ts';
import type { FlowSteel } from './problem.ts';

/**
 * Strain below which a law of the library is not followed: they start from no stress at no strain, where hot steel
 * yields at about half of what it reaches at a strain of 0.2. Shida gives 55 % there with 0.7 % carbon, the law of lead
 * 58 % of its level; assumed, no source.
 */
export const smallestStrain = 0.02;

/** 1/s: the laws are powers of the rate here; Shida's further factors above 100 1/s are left out. */
const usualRate = 10;

/** A flow stress law of the library as the metal-flow model takes it: a power of the rate around the reference rate, 1/s. */
export const lawSteel = (law: FlowStressLaw, referenceRate = usualRate): FlowSteel => ({
  name: law.name,
  strength: (strain, T) => law.stress(Math.max(strain, smallestStrain), referenceRate, T),
  exponent: (T) => law.rateExponent(referenceRate, T),
  referenceRate,
});
