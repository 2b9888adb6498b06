import { type Edge, tangentAt } from './edges.ts';

/** Angle by which the direction jumps from the end of one edge to the start of the next, rad, positive to the left. */
export function turnAtJoint(before: Edge, after: Edge): number {
  const [from, to] = [tangentAt(before, 1), tangentAt(after, 0)];
  return Math.atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y);
}
