import { Clipper, EndType, JoinType } from 'clipper2-ts';
import { ok, type Result } from '../outcome/result.ts';
import { decimals, partsOf, paths } from './clip.ts';
import { type Edge, edgesOf, type Point, pointAt, signedRadius, tangentAt } from './edges.ts';
import { turnAtJoint } from './joints.ts';
import type { Outline, Vertex } from './outline.ts';
import { selfCrossing } from './self-crossing.ts';

/** Joints that turn less than this count as tangent, rad. */
const tangentWithin = 1e-6;

/**
 * The outline at a distance (m), outwards positive. Exact, lines and arcs again, where no arc shrinks through its
 * centre, no corner closes and nothing meets itself; elsewhere by chords within 2 µm, with opening corners rounded,
 * in as many parts as are left.
 */
export function offset(outline: Outline, distance: number): Result<Outline[]> {
  const exact = exactOffset(outline, distance);
  if (exact && !selfCrossing(exact)) return ok([exact]);
  const inflated = Clipper.inflatePathsD(
    paths(outline, 1e-6),
    distance * 1e3,
    JoinType.Round,
    EndType.Polygon,
    2,
    decimals,
    1e-3,
  );
  return partsOf(inflated);
}

/** Every edge moved along its normals; opening corners get an arc about the corner. Undefined where that cannot be. */
export function exactOffset(outline: Outline, distance: number): Outline | undefined {
  const edges = edgesOf(outline);
  const vertices: Vertex[] = [];
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[i];
    if (edge.bulge !== 0 && !(1 + distance / signedRadius(edge) > 0)) return undefined;
    const turn = turnAtJoint(edges[(i + edges.length - 1) % edges.length], edge);
    const isTangent = Math.abs(turn) < tangentWithin;
    if (!isTangent && turn * distance < 0) return undefined;
    if (!isTangent)
      vertices.push({
        ...outwards(edges[(i + edges.length - 1) % edges.length], 1, distance),
        bulge: Math.tan(turn / 4),
      });
    vertices.push({ ...outwards(edge, 0, distance), bulge: edge.bulge });
  }
  return { vertices };
}

/** A point of an edge moved to the right of its direction, which is away from the material. */
function outwards(edge: Edge, share: number, distance: number): Point {
  const [point, tangent] = [pointAt(edge, share), tangentAt(edge, share)];
  return { x: point.x + tangent.y * distance, y: point.y - tangent.x * distance };
}
