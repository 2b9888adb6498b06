import type { Field, Indices } from '../outcome/field.ts';
import { edgesOf, nearestOn } from './edges.ts';
import { type TriMesh, triangleCount } from './mesh.ts';
import type { Outline } from './outline.ts';

/** Six-node triangles: corners 0, 1, 2 and the middles 3 of 0-1, 4 of 1-2, 5 of 2-0. Boundary middles lie on the true arc. */
export interface QuadraticMesh {
  readonly xy: Field;
  readonly triangles: Indices;
  /** 1 for nodes on the boundary. */
  readonly onBoundary: Uint8Array;
}

/** A node in the middle of every edge of a mesh; on the boundary it is moved out to the outline's lines and arcs. */
export function quadraticMesh(mesh: TriMesh, outline: Outline): QuadraticMesh {
  const xy = Array.from(mesh.xy);
  const middleOf = new Map<number, number>();
  const triangles = new Int32Array(6 * triangleCount(mesh));
  const middle = (a: number, b: number): number => {
    const name = Math.min(a, b) * mesh.xy.length + Math.max(a, b);
    const known = middleOf.get(name);
    if (known !== undefined) return known;
    const node = xy.push((xy[2 * a] + xy[2 * b]) / 2, (xy[2 * a + 1] + xy[2 * b + 1]) / 2) / 2 - 1;
    middleOf.set(name, node);
    return node;
  };
  for (let t = 0; t < triangleCount(mesh); t++) {
    const [a, b, c] = [mesh.triangles[3 * t], mesh.triangles[3 * t + 1], mesh.triangles[3 * t + 2]];
    triangles.set([a, b, c, middle(a, b), middle(b, c), middle(c, a)], 6 * t);
  }
  const onBoundary = new Uint8Array(xy.length / 2);
  const edges = edgesOf(outline);
  for (let i = 0; i < mesh.boundary.length; i += 2) {
    const node = middle(mesh.boundary[i], mesh.boundary[i + 1]);
    const { x, y } = nearestOn(edges, xy[2 * node], xy[2 * node + 1]);
    [xy[2 * node], xy[2 * node + 1]] = [x, y];
    onBoundary[node] = onBoundary[mesh.boundary[i]] = 1;
  }
  return { xy: Float64Array.from(xy), triangles, onBoundary };
}
