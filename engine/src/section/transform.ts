import type { TriMesh } from './mesh.ts';
import type { Outline, Vertex } from './outline.ts';

/** Outline and mesh keep their numbering under every move; only mirroring renumbers the edges (see `mirrored`). */

export const moved = ({ vertices }: Outline, dx: number, dy: number): Outline => ({
  vertices: vertices.map(({ x, y, bulge }) => ({ x: x + dx, y: y + dy, bulge })),
});

/** Turned about the origin, counter-clockwise, rad. */
export function turned({ vertices }: Outline, angle: number): Outline {
  const [c, s] = cosineAndSine(angle);
  return { vertices: vertices.map(({ x, y, bulge }) => ({ x: c * x - s * y, y: s * x + c * y, bulge })) };
}

/** Scaled about the origin by a positive factor. */
export const scaled = ({ vertices }: Outline, factor: number): Outline => ({
  vertices: vertices.map(({ x, y, bulge }) => ({ x: x * factor, y: y * factor, bulge })),
});

/** The line to mirror in: x = const swaps left and right, y = const swaps up and down. */
export type MirrorLine = 'x' | 'y';

/** Mirrored in the line x = at (or y = at); still counter-clockwise. Of n edges, old edge k becomes edge n − 1 − k. */
export function mirrored({ vertices }: Outline, line: MirrorLine = 'x', at = 0): Outline {
  const n = vertices.length;
  return {
    vertices: vertices.map((_, j) => {
      const { x, y } = mirroredPoint(vertices[(n - j) % n], line, at);
      return { x, y, bulge: vertices[n - 1 - j].bulge };
    }),
  };
}

const mirroredPoint = ({ x, y }: Vertex, line: MirrorLine, at: number) =>
  line === 'x' ? { x: 2 * at - x, y } : { x, y: 2 * at - y };

export const movedMesh = (mesh: TriMesh, dx: number, dy: number): TriMesh =>
  withNodes(mesh, (x, y) => [x + dx, y + dy]);

export function turnedMesh(mesh: TriMesh, angle: number): TriMesh {
  const [c, s] = cosineAndSine(angle);
  return withNodes(mesh, (x, y) => [c * x - s * y, s * x + c * y]);
}

export const scaledMesh = (mesh: TriMesh, factor: number): TriMesh =>
  withNodes(mesh, (x, y) => [x * factor, y * factor]);

/** The mesh of the mirrored outline with `edgeCount` edges: nodes keep their numbers, so fields stay valid. */
export function mirroredMesh(mesh: TriMesh, edgeCount: number, line: MirrorLine = 'x', at = 0): TriMesh {
  const placed = withNodes(mesh, (x, y) => (line === 'x' ? [2 * at - x, y] : [x, 2 * at - y]));
  return {
    xy: placed.xy,
    triangles: swapped(mesh.triangles, 3),
    boundary: swapped(mesh.boundary, 2),
    boundaryEdgeOf: Int32Array.from(mesh.boundaryEdgeOf, (edge) => edgeCount - 1 - edge),
  };
}

function withNodes(mesh: TriMesh, place: (x: number, y: number) => readonly [number, number]): TriMesh {
  const xy = new Float64Array(mesh.xy.length);
  for (let i = 0; i < xy.length; i += 2) xy.set(place(mesh.xy[i], mesh.xy[i + 1]), i);
  return { ...mesh, xy };
}

/** First and last node of every group change places, which turns its sense. */
function swapped(nodes: TriMesh['triangles'], each: number): Int32Array {
  const turnedOver = Int32Array.from(nodes);
  for (let i = 0; i < turnedOver.length; i += each) {
    [turnedOver[i], turnedOver[i + each - 1]] = [nodes[i + each - 1], nodes[i]];
  }
  return turnedOver;
}

/** Quarter turns are exact, so that a tipped bar keeps its symmetry to the last digit. */
function cosineAndSine(angle: number): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  if (!Number.isInteger(quarters)) return [Math.cos(angle), Math.sin(angle)];
  return (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[((quarters % 4) + 4) % 4];
}
