import type { Field } from '../outcome/field.ts';
import type { Graph } from './graph.ts';

/** A piece of a graph in three: no vertex of `left` touches one of `right`. */
export interface Halves {
  readonly left: Int32Array;
  readonly right: Int32Array;
  readonly separator: Int32Array;
}

/** A graph that is going to be cut, with what all cuts share. */
export interface Bisector {
  readonly graph: Graph;
  /** Rank of each vertex along x and along y, when coordinates are known. */
  readonly ranks: readonly Int32Array[];
  /** During a sweep: where each vertex is. */
  readonly side: Uint8Array;
  /** During a sweep: how many neighbours on the right a vertex on the left still has. */
  readonly open: Int32Array;
  readonly distance: readonly [Int32Array, Int32Array];
}

const [outside, onRight, onLeft] = [0, 1, 2];

/** A cut should leave at least this part of the piece on either side. */
const smallestPart = 0.2;

/** coordinates: x, y per vertex. */
export function bisector(graph: Graph, coordinates?: Field): Bisector {
  const size = graph.weight.length;
  const ranks = coordinates ? [0, 1].map((axis) => ranksAlong(coordinates, axis, size)) : [];
  const distance = [new Int32Array(size).fill(-1), new Int32Array(size).fill(-1)] as const;
  return { graph, ranks, side: new Uint8Array(size), open: new Int32Array(size), distance };
}

function ranksAlong(coordinates: Field, axis: number, size: number): Int32Array {
  const order = Int32Array.from({ length: size }, (_, v) => v);
  order.sort((a, b) => coordinates[2 * a + axis] - coordinates[2 * b + axis] || a - b);
  const rank = new Int32Array(size);
  for (let k = 0; k < size; k++) rank[order[k]] = k;
  return rank;
}

/**
 * The best of a few sweeps across a piece: a front moves along a direction, and where it is thin the piece is cut.
 * Undefined when every cut leaves one side empty.
 */
export function bisect(bisector: Bisector, piece: Int32Array): Halves | undefined {
  let best: Cut | undefined;
  for (const along of directions(bisector, piece)) {
    const forward = sorted(piece, along);
    for (const order of [forward, forward.slice().reverse()]) {
      const cut = thinnestCut(bisector, order);
      if (cut && !(best && best.cost <= cut.cost)) best = cut;
    }
  }
  return best && halvesAt(bisector, best);
}

/** The piece by ascending `along`, ties by number. */
function sorted(piece: Int32Array, along: (v: number) => number): Int32Array {
  const size = 2 ** 26;
  const keys = Float64Array.from(piece, (v) => along(v) * size + v).sort();
  return Int32Array.from(keys, (key) => key - size * Math.floor(key / size));
}

interface Cut {
  readonly order: Int32Array;
  /** How many vertices of `order` the front has passed. */
  readonly passed: number;
  readonly cost: number;
}

/** Moves vertices from right to left one by one; the separator is what on the left still touches the right. */
function thinnestCut({ graph, side, open }: Bisector, order: Int32Array): Cut | undefined {
  const { start, neighbour, weight } = graph;
  let [left, separator, right] = [0, 0, 0];
  for (const v of order) {
    side[v] = onRight;
    right += weight[v];
  }
  let [bestPassed, bestCost] = [0, Number.POSITIVE_INFINITY];
  for (let passed = 1; passed < order.length; passed++) {
    const v = order[passed - 1];
    side[v] = onLeft;
    open[v] = 0;
    right -= weight[v];
    for (let at = start[v]; at < start[v + 1]; at++) {
      const other = neighbour[at];
      if (side[other] === onRight) open[v]++;
      else if (side[other] === onLeft && --open[other] === 0) {
        separator -= weight[other];
        left += weight[other];
      }
    }
    if (open[v] > 0) separator += weight[v];
    else left += weight[v];
    const cost = costOf(separator, left, right);
    if (cost < bestCost) [bestPassed, bestCost] = [passed, cost];
  }
  for (const v of order) side[v] = outside;
  return bestPassed > 0 ? { order, passed: bestPassed, cost: bestCost } : undefined;
}

/** Thin first, then balanced, never lopsided. */
function costOf(separator: number, left: number, right: number): number {
  const part = Math.min(left, right) / (left + right + separator);
  if (part <= 0) return Number.POSITIVE_INFINITY;
  const lopsided = Math.max(0, smallestPart - part) / part;
  return (separator + 0.1) * (1 + 0.3 * (0.5 / part - 1) + 10 * lopsided);
}

function halvesAt({ graph, side }: Bisector, { order, passed }: Cut): Halves {
  const { start, neighbour } = graph;
  const [before, right] = [order.slice(0, passed), order.slice(passed)];
  for (const v of right) side[v] = onRight;
  const touchesRight = (v: number) => {
    for (let at = start[v]; at < start[v + 1]; at++) if (side[neighbour[at]] === onRight) return true;
    return false;
  };
  const separator = before.filter(touchesRight);
  const left = before.filter((v) => !touchesRight(v));
  for (const v of right) side[v] = outside;
  return { left, right, separator };
}

/** What to sweep along: x and y, or how much farther one end of the piece is than the other. */
function directions({ graph, ranks, distance }: Bisector, piece: Int32Array): ((v: number) => number)[] {
  if (ranks.length > 0) return ranks.map((rank) => (v: number) => rank[v]);
  const [fromOne, fromOther] = distance;
  const oneEnd = measure(graph, piece, piece[0], fromOne);
  const otherEnd = measure(graph, piece, oneEnd, fromOne);
  measure(graph, piece, otherEnd, fromOther);
  return [(v) => fromOne[v] - fromOther[v] + piece.length, (v) => fromOne[v]];
}

/** Edges from one vertex to each other one of the piece, the last reached being returned; unreached ones count as far. */
function measure({ start, neighbour }: Graph, piece: Int32Array, from: number, distance: Int32Array): number {
  const far = piece.length;
  distance.fill(-1);
  for (const v of piece) distance[v] = far;
  const queue = [from];
  distance[from] = 0;
  for (const v of queue) {
    for (let at = start[v]; at < start[v + 1]; at++) {
      const other = neighbour[at];
      if (distance[other] !== far) continue;
      distance[other] = distance[v] + 1;
      queue.push(other);
    }
  }
  return piece.find((v) => distance[v] === far) ?? queue[queue.length - 1];
}
