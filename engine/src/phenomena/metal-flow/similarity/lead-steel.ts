import { type LeadBlock, lead } from '../../../steel/lead.ts';
import type { FlowSteel } from '../problem.ts';

/** Lead hardens from nothing; the flow model begins where it has hardened to 58 % of its level. */
const smallestStrain = 0.02;

/**
 * Lead as the flow model takes it, at room temperature; the law, its doubt and its range are those of `lead`. Strains
 * below 0.02 count as 0.02.
 */
export function leadSteel(block?: LeadBlock): FlowSteel {
  const law = lead(block);
  return {
    name: law.name,
    strength: (strain, T) => law.stress(Math.max(strain, smallestStrain), referenceRate, T),
    exponent: (T) => law.rateExponent(referenceRate, T),
    referenceRate,
  };
}

const referenceRate = 1;
