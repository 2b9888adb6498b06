import { fail, ok, type Result } from '../outcome/result.ts';
import { boundaryCurve, perimeterOf, pointAtDistance } from './boundary-curve.ts';
import { cutAt } from './cut.ts';
import { edgesOf, nearestOn } from './edges.ts';
import type { TriMesh } from './mesh.ts';
import { boundaryNodes } from './meshing/boundary-nodes.ts';
import { triangulatedPolygon } from './meshing/delaunay-of-boundary.ts';
import { refine } from './meshing/refinement.ts';
import { type Sizing, sizingOf } from './meshing/sizing.ts';
import { smooth } from './meshing/smoothing.ts';
import { boundaryOf, type Parts, renumbered, withMirrorImage } from './meshing/whole-mesh.ts';
import type { Outline } from './outline.ts';
import { sectionProperties } from './properties.ts';
import { type SymmetryLine, symmetryLines } from './symmetry.ts';

export interface MeshWishes {
  /** Edge length away from small radii and thin walls, m. */
  readonly size: number;
  /** Shortest edge asked for at small radii, m; a third of the size unless given. */
  readonly smallest?: number;
}

/** Smallest angle asked of the refinement, rad: a little above what is promised. */
const angleAsked = (30 * Math.PI) / 180;

/**
 * Linear triangles over an outline: 28° or more, except in corners that are themselves sharper; every boundary node
 * on the true lines and arcs, every sharp corner a node. A symmetric outline gets a mesh that is symmetric to the last
 * digit. Nodes are numbered along the longer side; the boundary runs in order around. Fails when the outline touches
 * itself or a corner is too sharp to be meshed.
 */
export function triangulate(outline: Outline, { size, smallest = size / 3 }: MeshWishes): Result<TriMesh> {
  const { area, bounds } = sectionProperties(outline);
  if (!(area > 0 && size > 0 && smallest > 0)) {
    return fail({
      model: 'mesh',
      reason: 'The outline encloses no area counter-clockwise, or the mesh size is not positive.',
    });
  }
  const across = Math.min(bounds.right - bounds.left, bounds.top - bounds.bottom);
  const largest = Math.min(size, across / 2);
  const wishes = { size: largest, smallest: Math.min(smallest, largest) };
  const lines = symmetryLines(outline);
  const half = triangulatedPart(partBeyond(outline, lines), sizingOf(outline, wishes), wishes, area);
  if (!half.ok) return half;
  return finished(outline, lines.reduce(withMirrorImage, half.value));
}

/** What lies on the upper side of every symmetry line: a half, a quarter, or the outline itself. */
const partBeyond = (outline: Outline, lines: readonly SymmetryLine[]): Outline =>
  lines.reduce((part, { line, at }) => cutAt(part, line, at).above[0] ?? part, outline);

function triangulatedPart(
  outline: Outline,
  sizing: Sizing,
  { size, smallest }: Required<MeshWishes>,
  area: number,
): Result<Parts> {
  const curve = boundaryCurve(outline);
  const places = boundaryNodes(curve, sizing);
  const points = places.map((place) => pointAtDistance(curve, place));
  const xy = Float64Array.from(points.flatMap(({ x, y }) => [x, y]));
  const coarse = triangulatedPolygon(xy);
  if (!coarse.ok) return coarse;
  const mostNodes = 4000 + Math.ceil((20 * area) / (smallest * smallest) + perimeterOf(curve) / smallest);
  const placeOf = new Map(places.map((place, node) => [node, place]));
  const mesh = {
    t: coarse.value,
    curve,
    placeOf,
    sizing,
    angle: angleAsked,
    floor: Math.min(size, smallest) / 20,
    mostNodes,
  };
  const refined = refine(mesh);
  if (!refined.ok) return refined;
  smooth(refined.value, 4);
  return refined;
}

function finished(outline: Outline, parts: Parts): Result<TriMesh> {
  const { xy, triangles } = renumbered(parts);
  const boundary = boundaryOf(triangles, xy.length / 2);
  if (!boundary) return fail({ model: 'mesh', reason: 'The outline touches itself in a point.' });
  const edges = edgesOf(outline);
  const boundaryEdgeOf = new Int32Array(boundary.length / 2);
  for (let i = 0; i < boundaryEdgeOf.length; i++) {
    const [a, b] = [2 * boundary[2 * i], 2 * boundary[2 * i + 1]];
    boundaryEdgeOf[i] = nearestOn(edges, (xy[a] + xy[b]) / 2, (xy[a + 1] + xy[b + 1]) / 2).edge;
  }
  return ok({ xy, triangles, boundary, boundaryEdgeOf });
}
