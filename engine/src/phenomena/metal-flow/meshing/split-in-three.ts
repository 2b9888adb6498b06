import type { Field, Indices } from '../../../outcome/field.ts';
import { type Edge, edgesOf, nearestOn } from '../../../section/edges.ts';
import { nodeCount, type TriMesh, triangleCount } from '../../../section/mesh.ts';
import type { Outline } from '../../../section/outline.ts';

/** Elements with the boundary once around, counter-clockwise. */
export interface Quads {
  readonly xy: Float64Array;
  readonly quads: Int32Array;
  readonly loop: Int32Array;
}

/**
 * Three four-node elements for each triangle: corner, middle of the edge, centroid, middle of the edge. Middles of
 * boundary edges stand on the outline's lines and arcs.
 */
export function splitInThree(mesh: TriMesh, outline: Outline): Quads {
  const { xy, triangles, boundary } = mesh;
  const count = nodeCount(mesh);
  const middleOf = new Map<number, number>();
  const nameOf = (a: number, b: number): number => (a < b ? a * count + b : b * count + a);
  const places: number[] = [...xy];
  const middle = (a: number, b: number): number => {
    const name = nameOf(a, b);
    const known = middleOf.get(name);
    if (known !== undefined) return known;
    const node = places.push((xy[2 * a] + xy[2 * b]) / 2, (xy[2 * a + 1] + xy[2 * b + 1]) / 2) / 2 - 1;
    middleOf.set(name, node);
    return node;
  };
  const quads = new Int32Array(12 * triangleCount(mesh));
  for (let t = 0; t < triangleCount(mesh); t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    const centroid = places.push(...centroidOf(xy, a, b, c)) / 2 - 1;
    quads.set([a, ab, centroid, ca, b, bc, centroid, ab, c, ca, centroid, bc], 12 * t);
  }
  const loop = Int32Array.from(boundary, (node, i) => (i % 2 === 0 ? node : middle(boundary[i - 1], node)));
  const placed = Float64Array.from(places);
  putOnOutline(placed, loop, edgesOf(outline));
  return { xy: placed, quads, loop };
}

const centroidOf = (xy: Field, a: number, b: number, c: number): readonly [number, number] => [
  (xy[2 * a] + xy[2 * b] + xy[2 * c]) / 3,
  (xy[2 * a + 1] + xy[2 * b + 1] + xy[2 * c + 1]) / 3,
];

/** Every second node of the loop is a middle; half way between its neighbours it may hang over an arc's chord. */
function putOnOutline(xy: Float64Array, loop: Indices, edges: readonly Edge[]): void {
  for (let i = 1; i < loop.length; i += 2) {
    const node = 2 * loop[i];
    const { x, y } = nearestOn(edges, xy[node], xy[node + 1]);
    xy[node] = x;
    xy[node + 1] = y;
  }
}
