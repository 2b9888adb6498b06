import type { Field } from '../../../outcome/field.ts';
import { alongX, alongY, type Freedom } from './freedom.ts';
import type { Moving } from './move-node.ts';
import type { Patch } from './patch.ts';

/**
 * Gives nodes that moved from `before` to `now` the values that the steel has there: f + ∇f · (now − before), no more
 * and no less than the nodes around had. Exact for a linear field. Returns how many nodes moved.
 */
export function carryAlong(
  moving: Moving,
  patch: Patch,
  before: Field,
  now: Field,
  fields: readonly Float64Array[],
): number {
  const moved = patch.nodes.subarray(0, patch.size).filter((node) => hasMoved(before, now, node));
  for (const field of fields) {
    const each = (2 * field.length) / before.length;
    const values = new Float64Array(each * moved.length);
    for (let i = 0; i < values.length; i++) {
      const [node, part] = [moved[Math.floor(i / each)], i % each];
      values[i] = valueAt(moving, before, now, node, { field, each, part });
    }
    for (let i = 0; i < values.length; i++)
      field[each * moved[Math.floor(i / each)] + (i % each)] = values[i];
  }
  return moved.length;
}

const hasMoved = (before: Field, now: Field, node: number): boolean =>
  before[2 * node] !== now[2 * node] || before[2 * node + 1] !== now[2 * node + 1];

/** One of the numbers that a field has at each node. */
interface Component {
  readonly field: Field;
  readonly each: number;
  readonly part: number;
}

const at = ({ field, each, part }: Component, node: number): number => field[each * node + part];

function valueAt(moving: Moving, before: Field, now: Field, node: number, f: Component): number {
  const kind = moving.freedom.kind[node];
  if (kind === alongX) return valueOnLine(moving.freedom, before, now, node, f, 0);
  if (kind === alongY) return valueOnLine(moving.freedom, before, now, node, f, 1);
  const { least, most, gx, gy, area } = surroundings(moving, before, node, f);
  const [dx, dy] = [now[2 * node] - before[2 * node], now[2 * node + 1] - before[2 * node + 1]];
  const change = area > 0 ? (gx * dx + gy * dy) / area : 0;
  return Math.min(most, Math.max(least, at(f, node) + change));
}

/** Range of a field over the elements around a node, and its gradient times their area; from the diagonals of each. */
function surroundings({ quads, around }: Moving, xy: Field, node: number, f: Component) {
  let [least, most, gx, gy, area] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0, 0];
  for (let i = around.starts[node]; i < around.starts[node + 1]; i++) {
    const k = 4 * around.elements[i];
    const [a, b, c, d] = [quads[k], quads[k + 1], quads[k + 2], quads[k + 3]];
    const [p, q, r, s] = [at(f, a), at(f, b), at(f, c), at(f, d)];
    const [acx, acy] = [xy[2 * c] - xy[2 * a], xy[2 * c + 1] - xy[2 * a + 1]];
    const [bdx, bdy] = [xy[2 * d] - xy[2 * b], xy[2 * d + 1] - xy[2 * b + 1]];
    gx += (r - p) * bdy - (s - q) * acy;
    gy += (s - q) * acx - (r - p) * bdx;
    area += acx * bdy - bdx * acy;
    least = Math.min(least, p, q, r, s);
    most = Math.max(most, p, q, r, s);
  }
  return { least, most, gx, gy, area };
}

/** Between two nodes of a line of symmetry as the line has it: what is nought all along it stays nought. */
function valueOnLine(
  { previous, next }: Freedom,
  before: Field,
  now: Field,
  node: number,
  f: Component,
  off: 0 | 1,
): number {
  const way = now[2 * node + off] - before[2 * node + off];
  const towardsNext = way * (before[2 * next[node] + off] - before[2 * node + off]) > 0;
  const other = towardsNext ? next[node] : previous[node];
  const share = way / (before[2 * other + off] - before[2 * node + off]);
  const limited = Math.min(1, Math.max(0, share));
  return (1 - limited) * at(f, node) + limited * at(f, other);
}
