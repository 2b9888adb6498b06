import type { Field, Indices } from '../outcome/field.ts';
import { type TriMesh, triangleCount } from './mesh.ts';

/** Three nodes of a mesh and their weights for each of a row of points: what carries a nodal field over to them. */
export interface Interpolation {
  /** Three node numbers per point. */
  readonly nodes: Indices;
  /** Three weights per point, none negative, sum 1. */
  readonly weights: Field;
}

export interface Locator {
  /** Number of the triangle that holds a point (on an edge: one of the two); -1 outside the mesh. */
  triangleAt(x: number, y: number): number;
  /** For points x0, y0, x1, y1, … in m. A point outside the mesh takes the values of the nearest boundary point. */
  interpolationAt(xy: Field): Interpolation;
}

/** Points on an edge belong to both triangles: barycentric coordinates down to this count as inside. */
const tolerance = -1e-9;

/** Point location in a mesh over a grid of square cells, about one triangle wide. */
export function locator(mesh: TriMesh): Locator {
  const grid = gridOf(mesh);
  const bary = new Float64Array(3);
  const triangleAt = (x: number, y: number): number => {
    const cell = cellAt(grid, x, y);
    if (cell < 0) return -1;
    for (let i = grid.starts[cell]; i < grid.starts[cell + 1]; i++) {
      const triangle = grid.triangles[i];
      barycentric(mesh, triangle, x, y, bary);
      if (bary[0] >= tolerance && bary[1] >= tolerance && bary[2] >= tolerance) return triangle;
    }
    return -1;
  };
  const interpolationAt = (xy: Field): Interpolation => {
    const count = xy.length / 2;
    const [nodes, weights] = [new Int32Array(3 * count), new Float64Array(3 * count)];
    for (let i = 0; i < count; i++) {
      const [x, y] = [xy[2 * i], xy[2 * i + 1]];
      const triangle = triangleAt(x, y);
      if (triangle >= 0) writeInside(mesh, triangle, x, y, bary, nodes, weights, i);
      else writeNearest(mesh, x, y, nodes, weights, i);
    }
    return { nodes, weights };
  };
  return { triangleAt, interpolationAt };
}

/** A nodal field at the points of an interpolation; writes into `out` where given. */
export function interpolated(
  { nodes, weights }: Interpolation,
  field: Field,
  out?: Float64Array,
): Float64Array {
  const values = out ?? new Float64Array(nodes.length / 3);
  for (let i = 0, k = 0; i < values.length; i++, k += 3) {
    values[i] =
      weights[k] * field[nodes[k]] +
      weights[k + 1] * field[nodes[k + 1]] +
      weights[k + 2] * field[nodes[k + 2]];
  }
  return values;
}

/** A nodal field of one mesh at the nodes of another. */
export const carriedOver = (from: TriMesh, field: Field, to: TriMesh): Float64Array =>
  interpolated(locator(from).interpolationAt(to.xy), field);

function barycentric(
  { xy, triangles }: TriMesh,
  triangle: number,
  x: number,
  y: number,
  out: Float64Array,
): void {
  const [a, b, c] = [
    2 * triangles[3 * triangle],
    2 * triangles[3 * triangle + 1],
    2 * triangles[3 * triangle + 2],
  ];
  const [bx, by, cx, cy] = [xy[b] - xy[a], xy[b + 1] - xy[a + 1], xy[c] - xy[a], xy[c + 1] - xy[a + 1]];
  const [px, py] = [x - xy[a], y - xy[a + 1]];
  const twice = bx * cy - by * cx;
  out[1] = (px * cy - py * cx) / twice;
  out[2] = (bx * py - by * px) / twice;
  out[0] = 1 - out[1] - out[2];
}

function writeInside(
  mesh: TriMesh,
  triangle: number,
  x: number,
  y: number,
  bary: Float64Array,
  nodes: Int32Array,
  weights: Float64Array,
  i: number,
): void {
  barycentric(mesh, triangle, x, y, bary);
  const [p, q, r] = [Math.max(0, bary[0]), Math.max(0, bary[1]), Math.max(0, bary[2])];
  const sum = p + q + r;
  for (let corner = 0; corner < 3; corner++) nodes[3 * i + corner] = mesh.triangles[3 * triangle + corner];
  weights[3 * i] = p / sum;
  weights[3 * i + 1] = q / sum;
  weights[3 * i + 2] = r / sum;
}

function writeNearest(
  { xy, boundary }: TriMesh,
  x: number,
  y: number,
  nodes: Int32Array,
  weights: Float64Array,
  i: number,
): void {
  let least = Number.POSITIVE_INFINITY;
  for (let e = 0; e < boundary.length; e += 2) {
    const [a, b] = [boundary[e], boundary[e + 1]];
    const [dx, dy] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
    const [px, py] = [x - xy[2 * a], y - xy[2 * a + 1]];
    const share = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
    const squared = (px - share * dx) ** 2 + (py - share * dy) ** 2;
    if (squared >= least) continue;
    least = squared;
    nodes.set([a, b, b], 3 * i);
    weights.set([1 - share, share, 0], 3 * i);
  }
}

/** Cells row by row from the lower left corner; the triangles that may touch cell c are triangles[starts[c] … starts[c + 1]). */
interface Grid {
  readonly left: number;
  readonly bottom: number;
  readonly columns: number;
  readonly rows: number;
  readonly cell: number;
  readonly starts: Int32Array;
  readonly triangles: Int32Array;
}

function cellAt({ left, bottom, columns, rows, cell }: Grid, x: number, y: number): number {
  const [column, row] = [Math.floor((x - left) / cell), Math.floor((y - bottom) / cell)];
  return column >= 0 && row >= 0 && column < columns && row < rows ? row * columns + column : -1;
}

function gridOf(mesh: TriMesh): Grid {
  const boxes = boxesOf(mesh);
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < boxes.length; i += 4) {
    [left, right] = [Math.min(left, boxes[i]), Math.max(right, boxes[i + 1])];
    [bottom, top] = [Math.min(bottom, boxes[i + 2]), Math.max(top, boxes[i + 3])];
  }
  const cell = Math.sqrt(((right - left) * (top - bottom)) / triangleCount(mesh));
  const margin = 1e-9 * cell;
  const [columns, rows] = [Math.ceil((right - left) / cell) + 1, Math.ceil((top - bottom) / cell) + 1];
  const empty = { left: left - margin, bottom: bottom - margin, columns, rows, cell };
  return { ...empty, ...sorted(boxes, empty) };
}

/** Left, right, bottom, top of each triangle. */
function boxesOf({ xy, triangles }: TriMesh): Float64Array {
  const boxes = new Float64Array((triangles.length / 3) * 4);
  for (let t = 0; 3 * t < triangles.length; t++) {
    const [a, b, c] = [2 * triangles[3 * t], 2 * triangles[3 * t + 1], 2 * triangles[3 * t + 2]];
    boxes[4 * t] = Math.min(xy[a], xy[b], xy[c]);
    boxes[4 * t + 1] = Math.max(xy[a], xy[b], xy[c]);
    boxes[4 * t + 2] = Math.min(xy[a + 1], xy[b + 1], xy[c + 1]);
    boxes[4 * t + 3] = Math.max(xy[a + 1], xy[b + 1], xy[c + 1]);
  }
  return boxes;
}

/** Counts, then places: the triangles whose box reaches into each cell. */
function sorted(
  boxes: Float64Array,
  grid: Omit<Grid, 'starts' | 'triangles'>,
): Pick<Grid, 'starts' | 'triangles'> {
  const { left, bottom, columns, rows, cell } = grid;
  const starts = new Int32Array(columns * rows + 1);
  const visit = (each: (c: number, t: number) => void): void => {
    for (let t = 0; 4 * t < boxes.length; t++) {
      const [fromColumn, toColumn] = [(boxes[4 * t] - left) / cell, (boxes[4 * t + 1] - left) / cell];
      const [fromRow, toRow] = [(boxes[4 * t + 2] - bottom) / cell, (boxes[4 * t + 3] - bottom) / cell];
      for (let row = Math.floor(fromRow); row <= toRow; row++)
        for (let column = Math.floor(fromColumn); column <= toColumn; column++)
          each(row * columns + column, t);
    }
  };
  visit((c) => starts[c + 1]++);
  for (let c = 0; c < columns * rows; c++) starts[c + 1] += starts[c];
  const triangles = new Int32Array(starts[columns * rows]);
  const filled = starts.slice();
  visit((c, t) => {
    triangles[filled[c]++] = t;
  });
  return { starts, triangles };
}
