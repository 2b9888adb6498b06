import type { Field } from '../../outcome/field.ts';
import type { Side } from '../../phenomena/metal-flow/problem.ts';
import { contains } from '../../section/contains.ts';
import { edgesOf, pointAt } from '../../section/edges.ts';
import type { Outline } from '../../section/outline.ts';

/** A roll's edge as points x, y in the exit plane, m, and the side of the bar that it lies on. */
export interface RollEdge {
  readonly side: Side;
  readonly points: Field;
}

export const isUpright = (side: Side): boolean => side === 'left' || side === 'right';

/** 1 where the roll lies at larger coordinates than the bar. */
export const beyond = (side: Side): 1 | -1 => (side === 'top' || side === 'right' ? 1 : -1);

/** Index of the coordinate across a roll's axis: y of top and bottom rolls, x of the others. */
const acrossOf = (side: Side): 0 | 1 => (isUpright(side) ? 0 : 1);

/** Coordinates of the edge across the axis, m. */
export function across({ side, points }: RollEdge): number[] {
  return Array.from({ length: points.length / 2 }, (_, i) => points[2 * i + acrossOf(side)]);
}

/** The mirror image of a roll in a line of symmetry: the roll on the other side. */
export function imageOf({ side, points }: RollEdge, line: 'x' | 'y'): RollEdge {
  const flipped = line === 'x' ? 0 : 1;
  return {
    side: opposite[side],
    points: Array.from(points, (value, i) => (i % 2 === flipped ? -value : value)),
  };
}

export const opposite: Readonly<Record<Side, Side>> = {
  top: 'bottom',
  bottom: 'top',
  left: 'right',
  right: 'left',
};

/** Whether two rolls touch or overlap in the exit plane. */
export function rollsTouch(a: RollEdge, b: RollEdge): boolean {
  if (a.side === opposite[b.side]) {
    const apart = beyond(a.side);
    if (anyPoint(a.points, (x, y) => depthBehind(b, x, y) >= 0)) return true;
    if (anyPoint(b.points, (x, y) => depthBehind(a, x, y) >= 0)) return true;
    return apart * (mean(across(a)) - mean(across(b))) <= 0;
  }
  return edgesCross(a.points, b.points);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Whether any part of the section lies where the roll stands in the exit plane, so that it will be squeezed. */
export function bitesInto(roll: RollEdge, outline: Outline): boolean {
  const skin = edgesOf(outline).flatMap((edge) => [0, 0.25, 0.5, 0.75].map((share) => pointAt(edge, share)));
  if (skin.some(({ x, y }) => depthBehind(roll, x, y) > bite)) return true;
  return anyPoint(roll.points, (x, y) => contains(outline, x, y));
}

/** Squeezing less than this counts as passing by, m. */
const bite = 1e-6;

/** How far a point lies behind the edge of a roll, m, across its axis; −∞ beside the roll. */
export function depthBehind({ side, points }: RollEdge, x: number, y: number): number {
  const c = acrossOf(side);
  const [along, height] = c === 1 ? [x, y] : [y, x];
  let deepest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [from, to] = [points[i + 1 - c], points[i + 3 - c]];
    if ((along - from) * (along - to) > 0 || from === to) continue;
    const share = (along - from) / (to - from);
    const edge = points[i + c] + share * (points[i + 2 + c] - points[i + c]);
    deepest = Math.max(deepest, beyond(side) * (height - edge));
  }
  return deepest;
}

function anyPoint(points: Field, test: (x: number, y: number) => boolean): boolean {
  for (let i = 0; i + 1 < points.length; i += 2) if (test(points[i], points[i + 1])) return true;
  return false;
}

/** Whether two chains of straight lines meet. */
function edgesCross(a: Field, b: Field): boolean {
  for (let i = 0; i + 3 < a.length; i += 2)
    for (let j = 0; j + 3 < b.length; j += 2) if (segmentsMeet(a, i, b, j)) return true;
  return false;
}

function segmentsMeet(a: Field, i: number, b: Field, j: number): boolean {
  const turn = (px: number, py: number, qx: number, qy: number, rx: number, ry: number) =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  const [p, q] = [a[i], a[i + 1]];
  const [r, s] = [a[i + 2], a[i + 3]];
  const [t, u] = [b[j], b[j + 1]];
  const [v, w] = [b[j + 2], b[j + 3]];
  return (
    turn(p, q, r, s, t, u) * turn(p, q, r, s, v, w) <= 0 &&
    turn(t, u, v, w, p, q) * turn(t, u, v, w, r, s) <= 0
  );
}
