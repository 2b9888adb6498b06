import type { Field } from '../outcome/field.ts';
import type { Graph } from './graph.ts';

/** A piece of a graph in three: no vertex of `left` touches one of `right`. */
export interface Halves {
  readonly left: Int32Array;
  readonly right: Int32Array;
  readonly separator: Int32Array;
}

/** A separator may leave at least this part of the piece on either side. */
const smallestPart = 0.2;

/**
 * The best of a few sweeps across a piece: a front moves along a direction, and where it is thin the piece is cut.
 * Undefined when nothing is left on one side of every cut.
 */
export function bisect(graph: Graph, piece: Int32Array, coordinates?: Field): Halves | undefined {
  const rightOf = new Uint8Array(graph.weight.length);
  let best: Cut | undefined;
  for (const along of directions(graph, piece, coordinates)) {
    const forward = piece.slice().sort((a, b) => along[a] - along[b] || a - b);
    for (const order of [forward, forward.slice().reverse()]) {
      const cut = thinnestCut(graph, order, rightOf);
      if (cut && !(best && best.cost <= cut.cost)) best = cut;
    }
  }
  return best && halvesAt(graph, best, rightOf);
}

interface Cut {
  readonly order: Int32Array;
  /** How many vertices of `order` the front has passed. */
  readonly passed: number;
  readonly cost: number;
}

/** Moves vertices from right to left one by one; the separator is what on the left still touches the right. */
function thinnestCut(graph: Graph, order: Int32Array, rightOf: Uint8Array): Cut | undefined {
  const { start, neighbour, weight } = graph;
  const open = new Int32Array(weight.length);
  let [total, left, separator] = [0, 0, 0];
  for (const v of order) {
    rightOf[v] = 1;
    total += weight[v];
  }
  const passedBefore = new Uint8Array(weight.length);
  let best: Cut | undefined;
  for (let passed = 1; passed < order.length; passed++) {
    const v = order[passed - 1];
    rightOf[v] = 0;
    passedBefore[v] = 1;
    left += weight[v];
    for (let at = start[v]; at < start[v + 1]; at++) {
      const other = neighbour[at];
      if (rightOf[other]) open[v]++;
      else if (passedBefore[other] && --open[other] === 0) separator -= weight[other];
    }
    if (open[v] > 0) separator += weight[v];
    const cost = costOf(separator, left - separator, total - left);
    if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { order, passed, cost };
  }
  for (const v of order) rightOf[v] = 0;
  return best;
}

/** Thin before balanced, but never lopsided. */
function costOf(separator: number, left: number, right: number): number {
  const part = Math.min(left, right) / (left + right + separator);
  if (part <= 0) return Number.POSITIVE_INFINITY;
  const lopsided = Math.max(0, smallestPart - part) / part;
  return (separator + 0.1) * (1 + 0.3 * (0.5 / part - 1) + 10 * lopsided);
}

function halvesAt({ start, neighbour }: Graph, { order, passed }: Cut, rightOf: Uint8Array): Halves {
  const right = order.slice(passed);
  for (const v of right) rightOf[v] = 1;
  const touchesRight = (v: number) => {
    for (let at = start[v]; at < start[v + 1]; at++) if (rightOf[neighbour[at]]) return true;
    return false;
  };
  const separator = order.slice(0, passed).filter(touchesRight);
  const left = order.slice(0, passed).filter((v) => !touchesRight(v));
  return { left, right, separator };
}

/** Numbers per vertex along which to sweep: x and y, or how much nearer one end of the graph is than the other. */
function directions(graph: Graph, piece: Int32Array, coordinates?: Field): Float64Array[] {
  const size = graph.weight.length;
  if (coordinates) {
    return [0, 1].map((axis) => Float64Array.from({ length: size }, (_, v) => coordinates[2 * v + axis]));
  }
  const oneEnd = farthest(distances(graph, piece, piece[0]), piece);
  const fromOne = distances(graph, piece, oneEnd);
  const otherEnd = farthest(fromOne, piece);
  const fromOther = distances(graph, piece, otherEnd);
  return [fromOne.map((d, v) => d - fromOther[v]), fromOne];
}

function farthest(distance: Float64Array, piece: Int32Array): number {
  return piece.reduce((most, v) => (distance[v] > distance[most] ? v : most));
}

/** Edges from one vertex to all others inside the piece; a part that cannot be reached is far away. */
function distances({ start, neighbour, weight }: Graph, piece: Int32Array, from: number): Float64Array {
  const distance = new Float64Array(weight.length).fill(-1);
  for (const v of piece) distance[v] = weight.length;
  const queue = [from];
  distance[from] = 0;
  for (const v of queue) {
    for (let at = start[v]; at < start[v + 1]; at++) {
      const other = neighbour[at];
      if (distance[other] !== weight.length) continue;
      distance[other] = distance[v] + 1;
      queue.push(other);
    }
  }
  return distance;
}
