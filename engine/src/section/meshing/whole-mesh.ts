import type { SymmetryLine } from '../symmetry.ts';
import { nextEdge } from './triangulation.ts';

/** Nodes and triangles without their neighbours: what is left of a triangulation once it is done. */
export interface Parts {
  readonly xy: readonly number[];
  readonly triangles: readonly number[];
}

/** Adds the mirror image of a half; nodes on the line are shared, and stand on it exactly. */
export function withMirrorImage({ xy, triangles }: Parts, { line, at }: SymmetryLine): Parts {
  const off = line === 'x' ? 0 : 1;
  const all = [...xy];
  const imageOf = new Int32Array(xy.length / 2);
  for (let node = 0; node < imageOf.length; node++) {
    const [x, y] = [xy[2 * node], xy[2 * node + 1]];
    const onLine = xy[2 * node + off] === at;
    imageOf[node] = onLine ? node : all.push(...(line === 'x' ? [2 * at - x, y] : [x, 2 * at - y])) / 2 - 1;
  }
  const images: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    images.push(imageOf[triangles[t + 2]], imageOf[triangles[t + 1]], imageOf[triangles[t]]);
  }
  return { xy: all, triangles: [...triangles, ...images] };
}

/** Numbers the nodes along the section's longer side, so that neighbours stand close together in memory. */
export function renumbered({ xy, triangles }: Parts): { xy: Float64Array; triangles: Int32Array } {
  const nodes = Array.from({ length: xy.length / 2 }, (_, i) => i);
  const [first, second] = extent(xy, 0) > extent(xy, 1) ? [0, 1] : [1, 0];
  nodes.sort((i, j) => xy[2 * i + first] - xy[2 * j + first] || xy[2 * i + second] - xy[2 * j + second]);
  const numberOf = new Int32Array(nodes.length);
  nodes.forEach((old, now) => {
    numberOf[old] = now;
  });
  return {
    xy: Float64Array.from(nodes.flatMap((old) => [xy[2 * old], xy[2 * old + 1]])),
    triangles: Int32Array.from(triangles, (old) => numberOf[old]),
  };
}

function extent(xy: readonly number[], off: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = off; i < xy.length; i += 2) {
    low = Math.min(low, xy[i]);
    high = Math.max(high, xy[i]);
  }
  return high - low;
}

/** Edges that belong to one triangle only, in order around the section; undefined where parts only touch in a node. */
export function boundaryOf(triangles: Int32Array, count: number): Int32Array | undefined {
  const endOf = (edge: number) => triangles[nextEdge(edge)];
  const seen = new Set(Array.from(triangles, (start, edge) => start * count + endOf(edge)));
  const open = Array.from(triangles.keys()).filter(
    (edge) => !seen.has(endOf(edge) * count + triangles[edge]),
  );
  const nextOf = new Map(open.map((edge) => [triangles[edge], endOf(edge)]));
  if (nextOf.size < open.length) return undefined;
  const boundary = new Int32Array(2 * open.length);
  let node = triangles[open[0]];
  for (let i = 0; i < boundary.length; i += 2) {
    boundary[i] = node;
    node = nextOf.get(node) ?? node;
    boundary[i + 1] = node;
  }
  return boundary;
}
