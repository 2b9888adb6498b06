import { edgesOf, nearestOn, pointAt } from './edges.ts';
import type { Outline } from './outline.ts';
import { boundsOf } from './properties.ts';
import type { MirrorLine } from './transform.ts';

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
  return candidates.filter((candidate) =>
    isSymmetric(outline, candidate, (right - left + top - bottom) * 1e-9),
  );
}

/** A middle within round-off of zero is zero, so that axis nodes stand on it exactly. */
const settled = (middle: number, extent: number): number => (Math.abs(middle) < 1e-12 * extent ? 0 : middle);

/** Every joint and every middle of an edge has its mirror image on the outline. */
function isSymmetric(outline: Outline, { line, at }: SymmetryLine, within: number): boolean {
  const edges = edgesOf(outline);
  return edges.every((edge) =>
    [0, 0.5].every((share) => {
      const { x, y } = pointAt(edge, share);
      const image = line === 'x' ? nearestOn(edges, 2 * at - x, y) : nearestOn(edges, x, 2 * at - y);
      return image.distance <= within;
    }),
  );
}
