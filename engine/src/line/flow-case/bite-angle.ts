import type { FlowRoll } from '../../phenomena/metal-flow/problem.ts';
import type { FlowSolution } from '../../phenomena/metal-flow/solution.ts';
import { isUpright } from './roll-geometry.ts';

/**
 * Angle, rad, between the exit plane and the place where a roll first touches the bar, as seen from the roll's axis: the
 * largest over the nodes that touch first. Nothing when the roll does not touch.
 */
export function biteAngleOf(
  roll: FlowRoll,
  { sections, steps }: FlowSolution,
  r: number,
): number | undefined {
  const first = steps.findIndex(({ contact }) => Array.from(contact.roll).includes(r));
  if (first < 0) return undefined;
  const { contact } = steps[first];
  const { distance, xy } = sections[first];
  const across = isUpright(roll.side) ? 0 : 1;
  const angles = Array.from(contact.node).flatMap((node, c) =>
    contact.roll[c] === r
      ? [Math.atan2(Math.max(0, distance), Math.abs(roll.axis - xy[2 * node + across]))]
      : [],
  );
  return Math.max(...angles);
}
