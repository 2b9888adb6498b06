import type { Finding } from '../../outcome/finding.ts';
import type { FlowProblem } from '../../phenomena/metal-flow/problem.ts';
import { freeBiteAngle, steadyBiteAngle } from '../../phenomena/rolling/bite.ts';
import { print } from '../../units/unit.ts';
import type { FlowRecord } from './record.ts';

/** A solved pass before anything is said about it. */
export type Pass = Omit<FlowRecord, 'findings'>;

/** Driven rolls draw a bar in by themselves up to tan α = μ, and hold one that is in up to about 1.5 times as far. */
export function biteFindings({ rolls }: FlowProblem, pass: Pass): Finding[] {
  return pass.rolls.flatMap(({ name, idle, biteAngle: value }, r): Finding[] => {
    const { friction } = rolls[r];
    const limit = freeBiteAngle(friction);
    if (idle || value === undefined || value <= 0.9 * limit) return [];
    const level = value > steadyBiteAngle(friction) ? 'outside' : value > limit ? 'near' : 'note';
    return [
      {
        level,
        check: 'bite-angle',
        text: `Roll ${name} first touches at ${print(value, 'deg')}; with friction ${friction} it takes a bar by itself up to ${print(limit, 'deg')}.`,
        advice:
          'Take less draught here, slow down for the bite, have the rolls ragged, or let the bar be pushed in.',
        value,
        limit,
        unit: 'deg',
      },
    ];
  });
}

/** Where a driven roll hardly holds the bar back anywhere, all its friction is spent on drawing it in. */
export const slipFindings = (pass: Pass): Finding[] =>
  pass.rolls.flatMap(({ name, idle, ahead }): Finding[] => {
    if (idle || ahead === undefined || ahead >= leastAhead) return [];
    return [
      {
        level: 'near',
        check: 'drive-reserve',
        text: `Roll ${name} drives the bar under ${print(1 - ahead, 'percent')} of its pressure: hardly any friction is in reserve.`,
        advice:
          'Take less draught, pull less from behind, or have the rolls rougher; a little less friction and the bar slips.',
        value: ahead,
        limit: leastAhead,
        unit: 'percent',
      },
    ];
  });

/** Assumed, no source. */
const leastAhead = 0.05;
