import type { Indices } from '../../../outcome/field.ts';

/** The element on the other side of each of an element's four edges, edge e from corner e to e + 1; -1 at the boundary. */
export function acrossEdges(quads: Indices): Int32Array {
  const across = new Int32Array(quads.length).fill(-1);
  const waiting = new Map<string, number>();
  for (let at = 0; at < quads.length; at++) {
    const [from, to] = [quads[at], quads[endOf(at)]];
    const other = waiting.get(`${to} ${from}`);
    if (other === undefined) waiting.set(`${from} ${to}`, at);
    else {
      across[at] = other >> 2;
      across[other] = at >> 2;
    }
  }
  return across;
}

/** Where in the list of corners the edge ends that starts at `at`. */
export const endOf = (at: number): number => (at & ~3) | ((at + 1) & 3);
