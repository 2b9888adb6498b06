import type { RubbedDraught } from '../../phenomena/rolling/pass.ts';
import { spreadLaws } from '../../phenomena/rolling/spread/spread.ts';
import type { SpreadLaw } from '../../phenomena/rolling/spread/spread-law.ts';

/** How a pass is told to spread: the law, the friction it wants, and the mill's own factors. */
export interface SpreadRule {
  readonly law: SpreadLaw;
  readonly friction: number;
  readonly bar: number;
  readonly foot: number;
  readonly head: number;
}

export const spreadLawNamed = (name: string): SpreadLaw | undefined =>
  spreadLaws.find((law) => law.name === name);

/** ln(b1/b0) by a law times a factor; 0 without a draught. */
export function spreadStrain({ law }: SpreadRule, draught: RubbedDraught, factor: number): number {
  if (!(draught.h1 < draught.h0)) return 0;
  return factor * Math.max(0, Math.log(law.width(draught) / draught.b0));
}

/**
 * Strain of a rail foot's width in a universal pass: it does not spread like a flat bar, because web and head carry it
 * along. It follows the balance of the reductions, foot less web, linearly (Takashima and Hiruta, ISIJ Int. 53 (2013) 690,
 * for channels, abstract). The two numbers were fitted to an own trial of one 60E1 schedule, four passes. Never more than
 * half of the thickness strain, the exact bound of a free block without friction.
 *
 * foot, web   ln(h0/h1) of the mean thicknesses.
 */
export function footSpreadStrain(foot: number, web: number, factor: number): number {
  const strain = factor * (balancedSpread + perBalance * (foot - web));
  return Math.min(Math.max(strain, -0.5 * Math.max(0, foot)), 0.5 * Math.max(0, foot));
}

const balancedSpread = 0.0086;
const perBalance = 0.044;
