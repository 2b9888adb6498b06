import type { FlowStressLaw } from './flow-stress.ts';
import type { Validity } from './law.ts';

/** What a block of lead is like. The law's own figures stand in where the block at hand was not pressed. */
export interface LeadBlock {
  /** Pa at a strain of 0.3 and 1 1/s, 20 °C. */
  readonly strength?: number;
  /** m of the rate factor rate^m. */
  readonly rateExponent?: number;
  /** n of the hardening (ε/0.3)^n. */
  readonly hardening?: number;
}

/** Between these the figures of a lead lie, by memory of the literature, unconfirmed: half of the range either way. */
export const leadRanges = {
  strength: { low: 20e6, high: 30e6 },
  rateExponent: { low: 0.04, high: 0.1 },
} as const;

/**
 * Flow stress of lead at room temperature, of which model blocks are made: it recrystallises there as steel does when it
 * is hot. σ = 25 MPa (ε/0.3)^0.2 rate^0.07; strength and rate exponent are the middles of their ranges (20 to 30 MPa,
 * 0.04 to 0.1), from memory, unconfirmed. The hardening exponent is assumed, and so is that recrystallisation holds the
 * stress level beyond a strain of 0.3; up to there torsion, plane strain and rolling agree in published tests.
 *
 * Press a piece of the same lead before loads are carried over to a hot bar: the range alone is ±20 %. Lead is poisonous:
 * local codes say how it may be cast, cut and cleaned away.
 * Outside: the stress takes no account of temperature and stays at that of 20 °C; rates are carried on.
 */
export function lead({
  strength = 25e6,
  rateExponent = 0.07,
  hardening = 0.2,
}: LeadBlock = {}): FlowStressLaw {
  const level = (strain: number): number => (Math.min(strain, plateau) / plateau) ** hardening;
  const mean = (strain: number): number =>
    strain <= plateau
      ? level(strain) / (1 + hardening)
      : 1 - (plateau / strain) * (hardening / (1 + hardening));
  return {
    name: 'Lead',
    source: 'Range of lead at room temperature; shape of hardening assumed',
    status: 'from memory, unconfirmed',
    validity,
    stress: (strain, rate) => strength * level(strain) * rate ** rateExponent,
    mean: (strain, rate) => strength * mean(strain) * rate ** rateExponent,
    rateExponent: () => rateExponent,
  };
}

/** Strain from which on recrystallisation is taken to hold the stress. */
const plateau = 0.3;

const validity: Validity = {
  temperature: { low: 15, high: 25, unit: 'C' },
  rate: { low: 0.01, high: 10, unit: 'perS' },
  strain: { low: 0, high: plateau, unit: 'one' },
};
