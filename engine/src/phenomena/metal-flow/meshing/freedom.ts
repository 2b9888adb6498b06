import type { Field } from '../../../outcome/field.ts';
import { onLineX, type QuadMesh, skin } from '../quad-mesh.ts';

/** How each node may move, and what it needs to know for that. */
export interface Freedom {
  /** Per node: one of the numbers below. */
  readonly kind: Uint8Array;
  /** Neighbours along the loop, −1 inside. */
  readonly previous: Int32Array;
  readonly next: Int32Array;
  /** Nodes that slide along the boundary: on the skin, and on lines of symmetry. */
  readonly sliding: Int32Array;
  /** Length of the boundary edge before such a node over that after it, when the mesh was made; 1 for other nodes. */
  readonly bornRatio: Float64Array;
}

export const inside = 0;
/** Parallel to the chord of its neighbours. */
export const alongSkin = 1;
/** Along x on a level line of symmetry, along y on an upright one. */
export const alongX = 2;
export const alongY = 3;
/** Where skin and line, or two lines, meet. */
export const stays = 4;

export function freedomOf({ xy, loop, lies }: QuadMesh): Freedom {
  const count = xy.length / 2;
  const [kind, bornRatio] = [new Uint8Array(count).fill(inside), new Float64Array(count).fill(1)];
  const [previous, next] = [new Int32Array(count).fill(-1), new Int32Array(count).fill(-1)];
  const n = loop.length;
  for (let i = 0; i < n; i++) {
    const [node, from, to] = [loop[i], lies[(i + n - 1) % n], lies[i]];
    previous[node] = loop[(i + n - 1) % n];
    next[node] = loop[(i + 1) % n];
    kind[node] = from !== to ? stays : to === skin ? alongSkin : to === onLineX ? alongY : alongX;
  }
  const sliding = Int32Array.from(loop).filter((node) => kind[node] !== stays);
  const freedom = { kind, previous, next, sliding, bornRatio };
  for (const node of sliding) bornRatio[node] = spacingRatio(freedom, xy, node);
  return freedom;
}

/** Length of the boundary edge before a node over that of the one after it. */
export function spacingRatio({ previous, next }: Freedom, xy: Field, node: number): number {
  const a = 2 * previous[node];
  const p = 2 * node;
  const b = 2 * next[node];
  const [ax, ay, bx, by] = [xy[p] - xy[a], xy[p + 1] - xy[a + 1], xy[b] - xy[p], xy[b + 1] - xy[p + 1]];
  return Math.sqrt((ax * ax + ay * ay) / (bx * bx + by * by));
}

/** A node of the boundary whose two edges have changed in ratio by more than this is moved between them. */
export const unevenBy = 2.5;

/** By how much that ratio has changed since the mesh was made, whichever way: 1 and more. */
export function unevenness(freedom: Freedom, xy: Field, node: number): number {
  const change = spacingRatio(freedom, xy, node) / freedom.bornRatio[node];
  return Math.max(change, 1 / change);
}

/** Cosine of the turn from which a skin node is a corner: 35°. */
const cornerCosine = Math.cos((35 * Math.PI) / 180);

export function isCorner({ previous, next }: Freedom, xy: Field, node: number): boolean {
  const a = 2 * previous[node];
  const p = 2 * node;
  const b = 2 * next[node];
  const [ax, ay, bx, by] = [xy[p] - xy[a], xy[p + 1] - xy[a + 1], xy[b] - xy[p], xy[b + 1] - xy[p + 1]];
  return ax * bx + ay * by < cornerCosine * Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
}
