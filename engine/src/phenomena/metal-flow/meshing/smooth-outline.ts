import { cutAt } from '../../../section/cut.ts';
import type { Outline, Vertex } from '../../../section/outline.ts';
import { type SymmetryLine, symmetryLines } from '../../../section/symmetry.ts';
import { mirrored } from '../../../section/transform.ts';
import type { Symmetry } from '../quad-mesh.ts';
import { inFewerEdges, type Smoothing } from './fewer-edges.ts';

/**
 * The outline of a computed part in fewer edges, see `inFewerEdges`; edges on lines of symmetry stay. A part that is its
 * own mirror image stays one: half of it is smoothed, and mirrored.
 */
export function smoothOutline(part: Outline, { x, y }: Symmetry, smoothing: Smoothing): Outline {
  const lines: SymmetryLine[] = [];
  if (x !== undefined) lines.push({ line: 'x', at: x });
  if (y !== undefined) lines.push({ line: 'y', at: y });
  return smoothed(part, symmetryLines(part), lines, smoothing);
}

function smoothed(
  part: Outline,
  [own, ...others]: readonly SymmetryLine[],
  kept: readonly SymmetryLine[],
  smoothing: Smoothing,
): Outline {
  const halves = own ? cutAt(part, own.line, own.at).above : [];
  if (!own || halves.length !== 1) return inFewerEdges(part, kept, smoothing);
  return withImage(smoothed(halves[0], others, [...kept, own], smoothing), own);
}

/** A half and its mirror image as one outline: the edges that both have on the line go. */
function withImage({ vertices }: Outline, { line, at }: SymmetryLine): Outline {
  const n = vertices.length;
  const isSeam = (i: number): boolean =>
    vertices[i % n].bulge === 0 && vertices[i % n][line] === at && vertices[(i + 1) % n][line] === at;
  const start = vertices.findIndex((_, i) => !isSeam(i) && isSeam(i + n - 1));
  const open: Vertex[] = [];
  for (let i = start; !isSeam(i); i++) open.push(vertices[i % n]);
  const end = vertices[(start + open.length) % n];
  const back = mirrored({ vertices: [...open, end] }, line, at).vertices;
  return { vertices: [...open, ...back.slice(1)] };
}
