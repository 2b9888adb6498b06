import type { Field, Indices } from '../../outcome/field.ts';

/**
 * Four-node elements over the part of a section that is computed: all of it, the half above the line y = `symmetry.y`,
 * or the quarter to the right of x = `symmetry.x` as well. Metres; x along the roll axes, y across the gap.
 *
 *       y ↑   3────2      element: counter-clockwise
 *         │   │    │
 *         │   0────1      loop: the boundary once around, counter-clockwise, material on the left;
 *         └────────→ x    edge i runs from loop[i] to loop[i + 1]
 */
export interface QuadMesh {
  readonly xy: Field;
  /** Four node numbers per element. */
  readonly quads: Indices;
  readonly loop: Indices;
  /** Where each edge of the loop lies: `skin`, or on one of the two lines of symmetry. */
  readonly lies: Indices;
  readonly symmetry: Symmetry;
}

/** Lines in which the whole section is its own mirror image; absent: no line. Nodes on them stand on them exactly. */
export interface Symmetry {
  readonly x?: number;
  readonly y?: number;
}

export const skin = 0;
export const onLineX = 1;
export const onLineY = 2;

export const quadCount = (mesh: QuadMesh): number => mesh.quads.length / 4;

/** How many times the computed part is in the whole section: 1, 2 or 4. */
export const copies = ({ x, y }: Symmetry): number => (x === undefined ? 1 : 2) * (y === undefined ? 1 : 2);

/** Area of one element at the node places `xy`, m²; exact for straight edges. */
export function quadArea(quads: Indices, xy: Field, k: number): number {
  const [a, b, c, d] = [2 * quads[4 * k], 2 * quads[4 * k + 1], 2 * quads[4 * k + 2], 2 * quads[4 * k + 3]];
  return ((xy[c] - xy[a]) * (xy[d + 1] - xy[b + 1]) - (xy[d] - xy[b]) * (xy[c + 1] - xy[a + 1])) / 2;
}

/** Smallest corner Jacobian of element k over the mean of its four: 1 for a parallelogram, 0 or less where it is turned over. */
export function jacobianShare(quads: Indices, xy: Field, k: number): number {
  let [least, sum] = [Number.POSITIVE_INFINITY, 0];
  for (let a = 0; a < 4; a++) {
    const here = 2 * quads[4 * k + a];
    const next = 2 * quads[4 * k + ((a + 1) & 3)];
    const last = 2 * quads[4 * k + ((a + 3) & 3)];
    const cross =
      (xy[next] - xy[here]) * (xy[last + 1] - xy[here + 1]) -
      (xy[last] - xy[here]) * (xy[next + 1] - xy[here + 1]);
    sum += cross;
    if (cross < least) least = cross;
  }
  return (4 * least) / Math.abs(sum);
}

/** Area that the loop encloses at the node places `xy`, m²: that of the computed part. */
export function loopArea(loop: Indices, xy: Field): number {
  let twice = 0;
  for (let i = 0; i < loop.length; i++) {
    const [a, b] = [2 * loop[i], 2 * loop[(i + 1) % loop.length]];
    twice += xy[a] * xy[b + 1] - xy[b] * xy[a + 1];
  }
  return twice / 2;
}
