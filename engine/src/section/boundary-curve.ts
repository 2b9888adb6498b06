import { type Edge, edgeLength, edgesOf, type Point, pointAt } from './edges.ts';
import type { Outline } from './outline.ts';

/** An outline measured along its length: point at any distance from vertex 0. */
export interface BoundaryCurve {
  readonly vertices: Outline['vertices'];
  readonly edges: readonly Edge[];
  /** Distance at which each edge starts, m; one more entry than edges, the last is the perimeter. */
  readonly starts: Float64Array;
}

export function boundaryCurve(outline: Outline): BoundaryCurve {
  const edges = edgesOf(outline);
  const starts = new Float64Array(edges.length + 1);
  for (let i = 0; i < edges.length; i++) starts[i + 1] = starts[i] + edgeLength(edges[i]);
  return { vertices: outline.vertices, edges, starts };
}

export const perimeterOf = ({ starts }: BoundaryCurve): number => starts[starts.length - 1];

/** Number of the edge on which a distance lies; distances past the perimeter go round again. */
export function edgeAtDistance({ starts }: BoundaryCurve, distance: number): number {
  let [low, high] = [0, starts.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle] <= distance) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function pointAtDistance(curve: BoundaryCurve, distance: number): Point {
  const around = distance % perimeterOf(curve);
  const i = edgeAtDistance(curve, around);
  const { vertices, edges, starts } = curve;
  // A joint is its vertex to the last digit: corners on a symmetry line must not leave it.
  if (around === starts[i]) return { x: vertices[i].x, y: vertices[i].y };
  return pointAt(edges[i], (around - starts[i]) / (starts[i + 1] - starts[i]));
}
