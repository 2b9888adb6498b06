import type { Indices } from '../../../outcome/field.ts';

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
