import { edgeBetween, nearestShare, pointAt } from '../../../section/edges.ts';
import type { Outline, Vertex } from '../../../section/outline.ts';

/** Bulge of the longest arc that is fitted at once: a third of a circle. */
const largestBulge = 0.6;

/** An outline whose rows of edges are looked through. */
export interface Row {
  readonly vertices: Outline['vertices'];
  /** How far a joint may be left, m. */
  readonly within: number;
  /** How far the middle of each edge may be, m. */
  readonly rooms: readonly number[];
}

/** Vertices are counted round and round. */
export const vertexAt = ({ vertices }: Row, i: number): Vertex => vertices[i % vertices.length];

export interface OneEdge {
  readonly edge: Vertex;
  /** Largest distance from what the edge stands for, as a share of what is allowed there. */
  readonly off: number;
}

/** The edge that stands for all from vertex `from` up to vertex `to`; undefined where none passes near enough. */
export function oneEdge(row: Row, from: number, to: number): OneEdge | undefined {
  const start = vertexAt(row, from);
  if (to === from + 1) return { edge: start, off: 0 };
  const edge = { ...start, bulge: bulgeThrough(row, from, to) };
  if (!(Math.abs(edge.bulge) < largestBulge)) return undefined;
  const off = largestShare(row, edge, from, to);
  return off <= 1 ? { edge, off } : undefined;
}

/**
 * Bulge of the arc through two vertices that passes the joints between them most nearly: each joint has its own, from the
 * angle under which it sees the chord; an arc passes it by the difference times its distances from both ends.
 */
function bulgeThrough(row: Row, from: number, to: number): number {
  const [start, end] = [vertexAt(row, from), vertexAt(row, to)];
  let [sum, weights] = [0, 0];
  for (let i = from + 1; i < to; i++) {
    const { x, y } = vertexAt(row, i);
    const [ax, ay, bx, by] = [x - start.x, y - start.y, end.x - x, end.y - y];
    const weight = (ax * ax + ay * ay) * (bx * bx + by * by);
    sum += weight * Math.tan(Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / 2);
    weights += weight;
  }
  return sum / weights;
}

/** How far an edge passes from the joints and the middles that it stands for, over what is allowed; ends once above 1. */
function largestShare(row: Row, one: Vertex, from: number, to: number): number {
  const edge = edgeBetween(one, vertexAt(row, to));
  const distance = (x: number, y: number): number => {
    const near = pointAt(edge, nearestShare(edge, x, y));
    return Math.hypot(near.x - x, near.y - y);
  };
  let share = 0;
  for (let i = from; i < to && share <= 1; i++) {
    const [a, b] = [vertexAt(row, i), vertexAt(row, i + 1)];
    share = Math.max(share, distance((a.x + b.x) / 2, (a.y + b.y) / 2) / roomAt(row, i));
    if (i > from) share = Math.max(share, distance(a.x, a.y) / row.within);
  }
  return share;
}

const roomAt = ({ rooms }: Row, i: number): number => rooms[i % rooms.length];
