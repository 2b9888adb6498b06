import type { Field } from '../outcome/field.ts';
import { bisect, bisector } from './bisection.ts';
import type { Graph } from './graph.ts';

/**
 * The tree of a nested dissection. Children come before their parent; the vertices of a separator (or of an
 * undivided piece) touch only each other, vertices of their descendants and vertices of their ancestors.
 */
export interface SeparatorTree {
  /** Vertices of each tree node: vertex[start[t]] … vertex[start[t + 1] − 1], in the order of elimination. */
  readonly start: Int32Array;
  readonly vertex: Int32Array;
  /** Tree node above, −1 for a root. */
  readonly parent: Int32Array;
}

/** A piece of at most so many unknowns is not divided further: one dense front costs less than three small ones. */
const smallestPiece = 24;

/**
 * Divides the graph by small separators, again and again.
 * Coordinates (x, y per vertex) guide the cuts when given; else distances along the graph do.
 * Source: A. George, SIAM J. Numer. Anal. 10 (1973) 345.
 */
export function dissect(graph: Graph, coordinates?: Field): SeparatorTree {
  const cutter = bisector(graph, coordinates);
  const start = [0];
  const vertex: number[] = [];
  const parent: number[] = [];

  /** Adds the tree of a piece; returns its roots, whose parent is still to come. */
  function divide(piece: Int32Array): number[] {
    const halves = weightOf(graph, piece) > smallestPiece ? bisect(cutter, piece) : undefined;
    if (!halves) return [close(piece, [])];
    const { left, right, separator } = halves;
    const roots = [...divide(left), ...divide(right)];
    return separator.length > 0 ? [close(separator, roots)] : roots;
  }

  function close(own: Int32Array, children: number[]): number {
    const node = parent.push(-1) - 1;
    for (const child of children) parent[child] = node;
    for (const v of own) vertex.push(v);
    start.push(vertex.length);
    return node;
  }

  if (graph.weight.length > 0) divide(Int32Array.from(graph.weight.keys()));
  return { start: Int32Array.from(start), vertex: Int32Array.from(vertex), parent: Int32Array.from(parent) };
}

function weightOf(graph: Graph, piece: Int32Array): number {
  let weight = 0;
  for (const v of piece) weight += graph.weight[v];
  return weight;
}
