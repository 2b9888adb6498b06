import type { TriMesh } from '../../section/mesh.ts';

/**
 * A rectangle in even columns and rows, each cell cut along alternating diagonals: the meshes of the exact cases.
 * Left lower corner at the origin, m. Outline edges: 0 bottom, 1 right, 2 top, 3 left.
 */
export function plateMesh(width: number, height: number, columns: number, rows: number): TriMesh {
  const node = (i: number, j: number) => j * (columns + 1) + i;
  const xy = new Float64Array(2 * (columns + 1) * (rows + 1));
  for (let j = 0; j <= rows; j++) {
    for (let i = 0; i <= columns; i++) {
      xy[2 * node(i, j)] = (width * i) / columns;
      xy[2 * node(i, j) + 1] = (height * j) / rows;
    }
  }
  const triangles: number[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const [a, b, c, d] = [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)];
      triangles.push(...((i + j) % 2 ? [a, b, d, b, c, d] : [a, b, c, a, c, d]));
    }
  }
  const boundary: number[] = [];
  const boundaryEdgeOf: number[] = [];
  const side = (count: number, edge: number, at: (k: number) => number) => {
    for (let k = 0; k < count; k++) {
      boundary.push(at(k), at(k + 1));
      boundaryEdgeOf.push(edge);
    }
  };
  side(columns, 0, (k) => node(k, 0));
  side(rows, 1, (k) => node(columns, k));
  side(columns, 2, (k) => node(columns - k, rows));
  side(rows, 3, (k) => node(0, rows - k));
  return {
    xy,
    triangles: Int32Array.from(triangles),
    boundary: Int32Array.from(boundary),
    boundaryEdgeOf: Int32Array.from(boundaryEdgeOf),
  };
}
