import { type Edge, edgesOf, edgesOfPath, pointAt, radius, turning } from './edges.ts';
import type { Outline, Path } from './outline.ts';

/** Corners x0, y0, x1, y1, … of a polygon inscribed in the outline whose chords leave the arcs by `sagitta` (m) at most. */
export function flattened(outline: Outline, sagitta: number): Float64Array {
  return Float64Array.from(startsOfChords(edgesOf(outline), sagitta));
}

/** Points x0, y0, x1, y1, … along an open path, both ends with it, whose chords leave the arcs by `sagitta` (m) at most. */
export function flattenedPath(path: Path, sagitta: number): Float64Array {
  const { x, y } = path.vertices[path.vertices.length - 1];
  return Float64Array.from([...startsOfChords(edgesOfPath(path), sagitta), x, y]);
}

function startsOfChords(edges: readonly Edge[], sagitta: number): number[] {
  const starts: number[] = [];
  for (const edge of edges) {
    const chords = chordsFor(edge, sagitta);
    for (let k = 0; k < chords; k++) {
      const { x, y } = pointAt(edge, k / chords);
      starts.push(x, y);
    }
  }
  return starts;
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
