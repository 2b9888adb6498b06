import { type BoundaryCurve, boundaryCurve, perimeterOf } from '../boundary-curve.ts';
import { type Edge, edgeLength, pointAt, radius, tangentAt, turning } from '../edges.ts';
import { turnAtJoint } from '../joints.ts';
import type { Outline } from '../outline.ts';

/** How long the edges of a mesh want to be, as a function of place: m at (x, y) m. */
export type Sizing = (x: number, y: number) => number;

export interface SizingWishes {
  /** Edge length away from everything small, m. */
  readonly size: number;
  /** No edge is asked to be shorter, however small a radius, m. */
  readonly smallest: number;
}

/** Largest turn of the boundary along one mesh edge, rad. */
const turnPerEdge = 0.9;
/** Mesh edges asked for across a wall. */
const edgesAcross = 1.5;
/** How fast edges may grow with distance, m per m. */
const growth = 0.35;

/**
 * Sizes that follow the radii of the boundary and the local thickness and grow from there at a steady rate:
 * at each sample of the boundary a wish, at each place the least of wish + growth × distance.
 */
export function sizingOf(outline: Outline, { size, smallest }: SizingWishes): Sizing {
  const curve = boundaryCurve(outline);
  const samples = boundarySamples(curve, size).map(({ x, y, nx, ny, byCurvature }) => ({
    x,
    y,
    wish: Math.max(smallest, Math.min(byCurvature, thickness(curve.edges, x, y, nx, ny) / edgesAcross)),
  }));
  const rows = Float64Array.from(
    samples.filter(({ wish }) => wish < size).flatMap(({ x, y, wish }) => [x, y, wish]),
  );
  return (x, y) => {
    let least = size;
    for (let i = 0; i < rows.length; i += 3) {
      const reach = (least - rows[i + 2]) / growth;
      const [dx, dy] = [rows[i] - x, rows[i + 1] - y];
      const squared = dx * dx + dy * dy;
      if (reach > 0 && squared < reach * reach) least = rows[i + 2] + growth * Math.sqrt(squared);
    }
    return least;
  };
}

/** A point of the boundary, the direction into the material, and the edge length that its curvature allows. */
interface Sample {
  readonly x: number;
  readonly y: number;
  readonly nx: number;
  readonly ny: number;
  readonly byCurvature: number;
}

function boundarySamples(curve: BoundaryCurve, size: number): Sample[] {
  const step = Math.min(size / 2, perimeterOf(curve) / 40);
  return curve.edges.flatMap((edge, i) => {
    const count = Math.ceil(Math.max(edgeLength(edge) / step, Math.abs(turning(edge)) / 0.5));
    const byCurvature = turnPerEdge * Math.min(radius(edge), radiusAtJoint(curve.edges, i));
    return Array.from({ length: count }, (_, k) => {
      const share = (k + 0.5) / count;
      const tangent = tangentAt(edge, share);
      return { ...pointAt(edge, share), nx: -tangent.y, ny: tangent.x, byCurvature };
    });
  });
}

/** A row of short chords is a curve in disguise: its radius from the turn at the joint before edge i, m. */
function radiusAtJoint(edges: readonly Edge[], i: number): number {
  const before = edges[(i + edges.length - 1) % edges.length];
  const turn = turnAtJoint(before, edges[i]);
  if (Math.abs(turn) < 1e-3 || Math.abs(turn) > sharpTurn) return Number.POSITIVE_INFINITY;
  return (edgeLength(before) + edgeLength(edges[i])) / 2 / Math.abs(turn);
}

/** A joint that turns more than this is a corner and always gets a node, rad. */
export const sharpTurn = 0.2;

/** Distance through the material from a boundary point along its inward normal, to the chords of the other side, m. */
function thickness(edges: readonly Edge[], x: number, y: number, nx: number, ny: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const { mx, my, ux, uy, half, bulge } of edges) {
    const facing = nx * uy - ny * ux;
    if (facing < 1e-9) continue;
    const [px, py] = [mx - x, my - y];
    const distance = (px * uy - py * ux) / facing;
    const along = distance * (nx * ux + ny * uy) - (px * ux + py * uy);
    if (Math.abs(along) <= half && distance > half * Math.abs(bulge) * 1e-6)
      nearest = Math.min(nearest, distance);
  }
  return nearest;
}
