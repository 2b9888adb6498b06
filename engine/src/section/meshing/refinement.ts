import { fail, ok, type Result } from '../../outcome/result.ts';
import { type BoundaryCurve, perimeterOf, pointAtDistance } from '../boundary-curve.ts';
import type { Sizing } from './sizing.ts';
import {
  cavityAround,
  endOf,
  fillCavity,
  leftOf,
  nextEdge,
  seesRim,
  startOf,
  type Triangulation,
} from './triangulation.ts';

/** A triangulation on its way, with the place of every boundary node along the true curve. */
export interface Refining {
  readonly t: Triangulation;
  readonly curve: BoundaryCurve;
  /** Distance along the boundary of each boundary node, m. */
  readonly placeOf: Map<number, number>;
  readonly sizing: Sizing;
  /** Angle below which a triangle is split, rad. */
  readonly angle: number;
  /** Edges are not split for the sake of an angle below this length, m. */
  readonly floor: number;
  readonly mostNodes: number;
}

/** Largest circumradius over that of the equilateral triangle of the wanted size. */
const roomy = 1.3;

/**
 * Delaunay refinement after Ruppert 1995 with the off-centres of Üngör 2004: the worst triangle gets a point on the
 * bisector of its shortest edge; a boundary edge that the point would crowd is split on the true curve instead.
 */
export function refine(mesh: Refining): Result<Triangulation> {
  const { t } = mesh;
  for (let bad = worstFirst(mesh); bad.length > 0; bad = worstFirst(mesh)) {
    let placed = 0;
    for (const { triangle, a, b, c } of bad) {
      const e = 3 * triangle;
      if (t.triangles[e] !== a || t.triangles[e + 1] !== b || t.triangles[e + 2] !== c) continue;
      if (improve(mesh, triangle)) placed++;
    }
    if (placed === 0) break;
    if (t.xy.length / 2 > mesh.mostNodes) return tooMany(mesh);
  }
  return ok(t);
}

const tooMany = ({ mostNodes }: Refining) =>
  fail({
    model: 'mesh',
    reason: `More than ${mostNodes} nodes and still thin triangles: the outline has a corner or a gap too sharp for this size.`,
  });

function worstFirst(mesh: Refining) {
  const { triangles } = mesh.t;
  const bad = [];
  for (let triangle = 0; 3 * triangle < triangles.length; triangle++) {
    const badness = badnessOf(mesh, shapeOf(mesh.t, triangle), triangle);
    const e = 3 * triangle;
    if (badness > 1)
      bad.push({ triangle, badness, a: triangles[e], b: triangles[e + 1], c: triangles[e + 2] });
  }
  return bad.sort((p, q) => q.badness - p.badness);
}

/** Shortest edge, circumcentre and circumradius of a triangle. */
interface Shape {
  readonly edge: number;
  readonly shortest: number;
  readonly x: number;
  readonly y: number;
  readonly circumradius: number;
}

function shapeOf({ xy, triangles }: Triangulation, triangle: number): Shape {
  const e = 3 * triangle;
  const [a, b, c] = [2 * triangles[e], 2 * triangles[e + 1], 2 * triangles[e + 2]];
  const [bx, by, cx, cy] = [xy[b] - xy[a], xy[b + 1] - xy[a + 1], xy[c] - xy[a], xy[c + 1] - xy[a + 1]];
  const [ab, ac, bc] = [bx * bx + by * by, cx * cx + cy * cy, (bx - cx) ** 2 + (by - cy) ** 2];
  const twice = 2 * (bx * cy - by * cx);
  const [x, y] = [(cy * ab - by * ac) / twice, (bx * ac - cx * ab) / twice];
  const least = Math.min(ab, bc, ac);
  const edge = least === ab ? e : least === bc ? e + 1 : e + 2;
  return { edge, shortest: Math.sqrt(least), x: xy[a] + x, y: xy[a + 1] + y, circumradius: Math.hypot(x, y) };
}

/** Above 1 when the triangle is too large for its place, or too thin. */
function badnessOf({ t, sizing, angle, floor }: Refining, shape: Shape, triangle: number): number {
  const e = 3 * triangle;
  const [a, b, c] = [2 * t.triangles[e], 2 * t.triangles[e + 1], 2 * t.triangles[e + 2]];
  const wanted = sizing((t.xy[a] + t.xy[b] + t.xy[c]) / 3, (t.xy[a + 1] + t.xy[b + 1] + t.xy[c + 1]) / 3);
  const tooLarge = (shape.circumradius * Math.sqrt(3)) / (roomy * wanted);
  const tooThin = (2 * shape.circumradius * Math.sin(angle)) / shape.shortest;
  return shape.shortest < floor || inCorner(t, shape.edge) ? tooLarge : Math.max(tooLarge, tooThin);
}

/** The thin angle, opposite the shortest edge, lies between two boundary edges: no point can widen it. */
const inCorner = ({ twins }: Triangulation, shortest: number): boolean =>
  twins[nextEdge(shortest)] < 0 && twins[nextEdge(nextEdge(shortest))] < 0;

/** Places one point for a bad triangle; false where none can be placed. */
function improve(mesh: Refining, triangle: number): boolean {
  const { t } = mesh;
  const shape = shapeOf(t, triangle);
  const { x, y } = offCentre(mesh, shape);
  const home = walkTo(t, triangle, x, y);
  if (home.blocked >= 0) return splitBoundary(mesh, home.blocked);
  const cavity = cavityAround(t, home.triangle, x, y);
  const crowded = cavity.rim.find((edge) => t.twins[edge] < 0 && crowds(t, edge, x, y));
  if (crowded !== undefined) return splitBoundary(mesh, crowded);
  if (!seesRim(t, cavity, x, y) || cavity.rim.length < cavity.triangles.length) return false;
  fillCavity(t, cavity, x, y);
  return true;
}

/** From the middle of the shortest edge towards the circumcentre, no farther than size or angle ask for. */
function offCentre({ t, sizing, angle }: Refining, { edge, shortest, x, y }: Shape) {
  const [a, b] = [2 * startOf(t, edge), 2 * endOf(t, edge)];
  const [mx, my] = [(t.xy[a] + t.xy[b]) / 2, (t.xy[a + 1] + t.xy[b + 1]) / 2];
  const [dx, dy] = [x - mx, y - my];
  const distance = Math.hypot(dx, dy);
  const circumradius = Math.max(sizing(mx, my), shortest) / Math.sqrt(3);
  const bySize = circumradius + Math.sqrt(circumradius ** 2 - shortest ** 2 / 4);
  const byAngle = shortest / 2 / Math.tan((angle * 1.05) / 2);
  const share = Math.min(1, bySize / distance, byAngle / distance);
  return { x: mx + dx * share, y: my + dy * share };
}

/** Inside the circle over the edge as diameter, widened a little: a triangle there would have an obtuse corner. */
function crowds({ xy, triangles }: Triangulation, edge: number, x: number, y: number): boolean {
  const [a, b] = [2 * triangles[edge], 2 * triangles[nextEdge(edge)]];
  return (xy[a] - x) * (xy[b] - x) + (xy[a + 1] - y) * (xy[b + 1] - y) < 0;
}

/** Straight walk from a triangle's middle to a point: the triangle that holds it, or the boundary edge in the way. */
function walkTo(
  t: Triangulation,
  triangle: number,
  x: number,
  y: number,
): { triangle: number; blocked: number } {
  const e = 3 * triangle;
  const [a, b, c] = [2 * t.triangles[e], 2 * t.triangles[e + 1], 2 * t.triangles[e + 2]];
  const [sx, sy] = [(t.xy[a] + t.xy[b] + t.xy[c]) / 3, (t.xy[a + 1] + t.xy[b + 1] + t.xy[c + 1]) / 3];
  const sideOf = (node: number) => (x - sx) * (t.xy[2 * node + 1] - sy) - (y - sy) * (t.xy[2 * node] - sx);
  for (let at = triangle, steps = 0; steps < t.triangles.length; steps++) {
    let exit = -1;
    for (let edge = 3 * at; edge < 3 * at + 3; edge++) {
      if (leftOf(t, edge, x, y) < 0 && sideOf(startOf(t, edge)) <= 0 && sideOf(endOf(t, edge)) >= 0)
        exit = edge;
    }
    if (exit < 0) return { triangle: at, blocked: -1 };
    if (t.twins[exit] < 0) return { triangle: at, blocked: exit };
    at = Math.floor(t.twins[exit] / 3);
  }
  return { triangle, blocked: -1 };
}

/** A new boundary node half way along the true curve between the ends of a boundary edge. */
export function splitBoundary({ t, curve, placeOf, floor }: Refining, edge: number): boolean {
  const [from, to] = [placeOf.get(startOf(t, edge)) ?? 0, placeOf.get(endOf(t, edge)) ?? 0];
  const end = to > from ? to : to + perimeterOf(curve);
  if (end - from < floor) return false;
  const place = ((from + end) / 2) % perimeterOf(curve);
  const { x, y } = pointAtDistance(curve, place);
  const cavity = cavityAround(t, Math.floor(edge / 3), x, y, edge);
  if (!seesRim(t, cavity, x, y) || cavity.rim.length < cavity.triangles.length) return false;
  placeOf.set(t.xy.length / 2, place);
  fillCavity(t, cavity, x, y);
  return true;
}
