import type { Field, Indices } from '../../../outcome/field.ts';
import { elementShape } from './element-shape.ts';

/** The elements that meet at each node: of node i elements[starts[i]] … elements[starts[i + 1] − 1]. */
export interface ElementsAround {
  readonly starts: Int32Array;
  readonly elements: Int32Array;
}

export function elementsAround(quads: Indices, nodes: number): ElementsAround {
  const starts = new Int32Array(nodes + 1);
  for (let i = 0; i < quads.length; i++) starts[quads[i] + 1]++;
  for (let i = 0; i < nodes; i++) starts[i + 1] += starts[i];
  const elements = new Int32Array(quads.length);
  const filled = starts.slice();
  for (let i = 0; i < quads.length; i++) elements[filled[quads[i]]++] = Math.floor(i / 4);
  return { starts, elements };
}

/** Worst shape of the elements around a node. */
export function worstAround(
  quads: Indices,
  xy: Field,
  { starts, elements }: ElementsAround,
  node: number,
): number {
  let worst = 1;
  for (let i = starts[node]; i < starts[node + 1]; i++) {
    const shape = elementShape(quads, xy, elements[i]);
    if (shape < worst) worst = shape;
  }
  return worst;
}

/** Mean of the middles of the elements around a node. */
export function meanMiddle(
  quads: Indices,
  xy: Field,
  { starts, elements }: ElementsAround,
  node: number,
): readonly [x: number, y: number] {
  let [x, y] = [0, 0];
  for (let i = starts[node]; i < starts[node + 1]; i++) {
    for (let corner = 4 * elements[i]; corner < 4 * elements[i] + 4; corner++) {
      x += xy[2 * quads[corner]];
      y += xy[2 * quads[corner] + 1];
    }
  }
  const count = 4 * (starts[node + 1] - starts[node]);
  return [x / count, y / count];
}
