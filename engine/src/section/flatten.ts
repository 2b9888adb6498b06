import { type Edge, edgesOf, pointAt, radius, turning } from './edges.ts';
import type { Outline } from './outline.ts';

/** Corners x0, y0, x1, y1, … of a polygon inscribed in the outline whose chords leave the arcs by `sagitta` (m) at most. */
export function flattened(outline: Outline, sagitta: number): Float64Array {
  const corners: number[] = [];
  for (const edge of edgesOf(outline)) {
    const chords = chordsFor(edge, sagitta);
    for (let k = 0; k < chords; k++) {
      const { x, y } = pointAt(edge, k / chords);
      corners.push(x, y);
    }
  }
  return Float64Array.from(corners);
}

/** The same polygon as an outline of straight edges. */
export function withChords(outline: Outline, sagitta: number): Outline {
  return outlineThrough(flattened(outline, sagitta));
}

/** An outline of straight edges through corners x0, y0, x1, y1, … */
export function outlineThrough(corners: ArrayLike<number>): Outline {
  const vertices = [];
  for (let i = 0; i + 1 < corners.length; i += 2)
    vertices.push({ x: corners[i], y: corners[i + 1], bulge: 0 });
  return { vertices };
}

/** How many equal chords keep within the sagitta: s = r (1 − cos(θ/2n)) = 2 r sin²(θ/4n). */
export function chordsFor(edge: Edge, sagitta: number): number {
  if (edge.bulge === 0) return 1;
  const perChord = 4 * Math.asin(Math.min(Math.SQRT1_2, Math.sqrt(sagitta / (2 * radius(edge)))));
  return Math.max(1, Math.ceil(Math.abs(turning(edge)) / perChord));
}
