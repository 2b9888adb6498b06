import { onLineX, onLineY, type QuadMesh, type Symmetry, skin } from './quad-mesh.ts';

export interface EvenMesh {
  /** m; the block stands with its corner at the origin. */
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** What the sides are; skin where nothing is said. `right: onLineX` holds the width: plane strain. */
  readonly sides?: { readonly left?: number; readonly right?: number; readonly bottom?: number };
  readonly symmetry?: Symmetry;
  /** Shifts of inner nodes as a share of an element's sides: a mesh that is not even at all. */
  readonly distortion?: number;
}

/**
 * A block in columns and rows of elements: the quarter of a bar, or a strip of one.
 *
 *     top, the skin
 *     6──7──8
 *     │  │  │
 *     3──4──5     right
 *     │  │  │
 *     0──1──2
 */
export function evenMesh(given: EvenMesh): QuadMesh {
  const { columns, rows, symmetry = { x: 0, y: 0 } } = given;
  const at = (i: number, j: number) => j * (columns + 1) + i;
  const quads: number[] = [];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) quads.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
  const { loop, lies } = around(given, at);
  return {
    xy: places(given),
    quads: Int32Array.from(quads),
    loop: Int32Array.from(loop),
    lies: Uint8Array.from(lies),
    symmetry,
  };
}

function places({ width, height, columns, rows, distortion = 0 }: EvenMesh): Float64Array {
  const xy: number[] = [];
  for (let j = 0; j <= rows; j++)
    for (let i = 0; i <= columns; i++) {
      const isInside = i > 0 && i < columns && j > 0 && j < rows;
      const off = isInside ? distortion : 0;
      xy.push(
        (width / columns) * (i + off * Math.sin(7 * i + 3 * j)),
        (height / rows) * (j + off * Math.cos(5 * i + 2 * j)),
      );
    }
  return Float64Array.from(xy);
}

function around({ columns, rows, sides = {} }: EvenMesh, at: (i: number, j: number) => number) {
  const { left = onLineX, right = skin, bottom = onLineY } = sides;
  const steps = (count: number) => Array.from({ length: count }, (_, k) => k);
  return {
    loop: [
      ...steps(columns).map((i) => at(i, 0)),
      ...steps(rows).map((j) => at(columns, j)),
      ...steps(columns).map((i) => at(columns - i, rows)),
      ...steps(rows).map((j) => at(0, rows - j)),
    ],
    lies: [
      ...steps(columns).map(() => bottom),
      ...steps(rows).map(() => right),
      ...steps(columns).map(() => skin),
      ...steps(rows).map(() => left),
    ],
  };
}
