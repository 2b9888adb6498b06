import { edgesOf, nearestOn, pointAt } from './edges.ts';
import type { Outline, Vertex } from './outline.ts';
import { boundsOf } from './properties.ts';
import { type MirrorLine, mirrored } from './transform.ts';

/** A line in which the outline is its own mirror image: x = at for an upright rail, y = at for a lying one. */
export interface SymmetryLine {
  readonly line: MirrorLine;
  readonly at: number;
}

/** Symmetry lines of an outline along the axes, to one part in 10⁹ of its size; up to two. */
export function symmetryLines(outline: Outline): SymmetryLine[] {
  const { left, right, bottom, top } = boundsOf(edgesOf(outline));
  const candidates: SymmetryLine[] = [
    { line: 'x', at: settled((left + right) / 2, right - left) },
    { line: 'y', at: settled((bottom + top) / 2, top - bottom) },
  ];
  const within = (right - left + top - bottom) * 1e-9;
  return candidates.filter(({ line, at }) => {
    const image = mirrored(outline, line, at);
    return sameVertices(outline, image, within) || sameCurve(outline, image, within);
  });
}

/** A middle within round-off of zero is zero, so that axis nodes stand on it exactly. */
const settled = (middle: number, extent: number): number => (Math.abs(middle) < 1e-12 * extent ? 0 : middle);

/** The usual case: the image has the same vertices, counted from another one. */
function sameVertices({ vertices }: Outline, image: Outline, within: number): boolean {
  const n = vertices.length;
  const start = image.vertices.findIndex((vertex) => isSame(vertices[0], vertex, within));
  return start >= 0 && vertices.every((vertex, i) => isSame(vertex, image.vertices[(start + i) % n], within));
}

const isSame = (a: Vertex, b: Vertex, within: number): boolean =>
  Math.abs(a.x - b.x) <= within && Math.abs(a.y - b.y) <= within && Math.abs(a.bulge - b.bulge) <= 1e-7;

/** Every joint and every middle of an edge of the image lies on the outline, however that is divided. */
function sameCurve(outline: Outline, image: Outline, within: number): boolean {
  const edges = edgesOf(outline);
  return edgesOf(image).every((edge) =>
    [0, 0.5].every((share) => {
      const { x, y } = pointAt(edge, share);
      return nearestOn(edges, x, y).distance <= within;
    }),
  );
}
