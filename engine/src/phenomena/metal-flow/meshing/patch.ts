import type { ElementsAround } from './neighbours.ts';

/** A set of nodes that grows ring by ring; kept from one use to the next. */
export interface Patch {
  /** The first `size` of them are in the patch, in the order in which they came. */
  readonly nodes: Int32Array;
  readonly size: number;
  clear(): void;
  add(node: number): void;
  /** Adds all nodes of the elements around those that are in. */
  grow(): void;
}

export function patchOver(quads: Int32Array, { starts, elements }: ElementsAround): Patch {
  const nodes = new Int32Array(starts.length - 1);
  const has = new Uint8Array(nodes.length);
  let size = 0;
  const add = (node: number): void => {
    if (has[node] === 0) nodes[size++] = node;
    has[node] = 1;
  };
  const addAround = (node: number): void => {
    for (let i = starts[node]; i < starts[node + 1]; i++) {
      for (let corner = 4 * elements[i]; corner < 4 * elements[i] + 4; corner++) add(quads[corner]);
    }
  };
  return {
    nodes,
    get size() {
      return size;
    },
    clear() {
      for (let i = 0; i < size; i++) has[nodes[i]] = 0;
      size = 0;
    },
    add,
    grow() {
      for (let i = 0, rim = size; i < rim; i++) addAround(nodes[i]);
    },
  };
}
