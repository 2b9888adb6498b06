import type { Field } from '../../../outcome/field.ts';
import {
  alongSkin,
  alongX,
  alongY,
  type Freedom,
  inside,
  isCorner,
  unevenBy,
  unevenness,
} from './freedom.ts';
import { type ElementsAround, meanMiddle, worstAround } from './neighbours.ts';

/** A mesh whose nodes are being moved. */
export interface Moving {
  readonly quads: Int32Array;
  readonly around: ElementsAround;
  readonly freedom: Freedom;
}

/** A shape above which some may be given away for even spacing. */
const plenty = 0.6;
/** Smallest share of the way that is worth going. */
const shortest = 0.25;
/** A shape below which a node looks around for a way. */
const desperate = 0.25;

/**
 * Moves one node by as much of the way to its better place as makes no element around it worse. Where that way is
 * barred and one is very poor, a node inside feels its way to where it is less so.
 */
export function moveNode(moving: Moving, xy: Float64Array, node: number): void {
  const [dx, dy] = wayOf(moving, xy, node);
  if (dx === 0 && dy === 0) return;
  const before = worstAround(moving.quads, xy, moving.around, node);
  const least = Math.min(plenty, before);
  let share = 1;
  while (share >= shortest && tried(moving, xy, node, share * dx, share * dy) < least) share /= 2;
  if (share >= shortest) put(xy, node, share * dx, share * dy);
  else if (before < desperate && moving.freedom.kind[node] === inside) feel(moving, xy, node, before);
}

const put = (xy: Float64Array, node: number, dx: number, dy: number): void => {
  xy[2 * node] += dx;
  xy[2 * node + 1] += dy;
};

/** The worst shape around a node if it stood elsewhere. */
function tried({ quads, around }: Moving, xy: Float64Array, node: number, dx: number, dy: number): number {
  const [x, y] = [xy[2 * node], xy[2 * node + 1]];
  put(xy, node, dx, dy);
  const worst = worstAround(quads, xy, around, node);
  xy[2 * node] = x;
  xy[2 * node + 1] = y;
  return worst;
}

/** The eight ways of the compass, and how far to go, as a share of the shortest edge. */
const compass = Float64Array.from({ length: 16 }, (_, i) =>
  i % 2 === 0 ? Math.cos((i * Math.PI) / 8) : Math.sin(((i - 1) * Math.PI) / 8),
);
const step = 0.2;

function feel(moving: Moving, xy: Float64Array, node: number, before: number): void {
  const reach = step * shortestEdge(moving, xy, node);
  let best = before;
  let way = -1;
  for (let i = 0; i < compass.length; i += 2) {
    const shape = tried(moving, xy, node, reach * compass[i], reach * compass[i + 1]);
    if (shape <= best) continue;
    best = shape;
    way = i;
  }
  if (way >= 0) put(xy, node, reach * compass[way], reach * compass[way + 1]);
}

function shortestEdge({ quads, around }: Moving, xy: Field, node: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = around.starts[node]; i < around.starts[node + 1]; i++) {
    for (let corner = 4 * around.elements[i]; corner < 4 * around.elements[i] + 4; corner++) {
      const [dx, dy] = [xy[2 * quads[corner]] - xy[2 * node], xy[2 * quads[corner] + 1] - xy[2 * node + 1]];
      if (quads[corner] !== node) least = Math.min(least, dx * dx + dy * dy);
    }
  }
  return Math.sqrt(least);
}

type Way = readonly [dx: number, dy: number];
const nowhere: Way = [0, 0];

function wayOf({ quads, around, freedom }: Moving, xy: Field, node: number): Way {
  const kind = freedom.kind[node];
  if (kind === alongSkin) return isCorner(freedom, xy, node) ? nowhere : wayAlongSkin(freedom, xy, node);
  if (kind !== inside && kind !== alongX && kind !== alongY) return nowhere;
  if (kind !== inside && unevenness(freedom, xy, node) > unevenBy) return wayAlongSkin(freedom, xy, node);
  const [x, y] = meanMiddle(quads, xy, around, node);
  return [kind === alongY ? 0 : x - xy[2 * node], kind === alongX ? 0 : y - xy[2 * node + 1]];
}

/** Parallel to the chord of the neighbours, to where the edges have the ratio that they were born with. */
function wayAlongSkin({ previous, next, bornRatio }: Freedom, xy: Field, node: number): Way {
  const [a, b] = [2 * previous[node], 2 * next[node]];
  const [cx, cy] = [xy[b] - xy[a], xy[b + 1] - xy[a + 1]];
  const along = ((xy[2 * node] - xy[a]) * cx + (xy[2 * node + 1] - xy[a + 1]) * cy) / (cx * cx + cy * cy);
  const wanted = bornRatio[node] / (1 + bornRatio[node]);
  return [(wanted - along) * cx, (wanted - along) * cy];
}
