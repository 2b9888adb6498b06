import type { Field, Indices } from '../outcome/field.ts';

/** Linear triangles over a section. Node i stands at (xy[2i], xy[2i+1]), m. Triangles and boundary run counter-clockwise. */
export interface TriMesh {
  readonly xy: Field;
  /** Three node numbers per triangle. */
  readonly triangles: Indices;
  /** Two node numbers per boundary edge, material on the left. */
  readonly boundary: Indices;
  /** Number of the outline's edge on which each boundary edge lies. */
  readonly boundaryEdgeOf: Indices;
}

export const nodeCount = (mesh: TriMesh): number => mesh.xy.length / 2;

export const triangleCount = (mesh: TriMesh): number => mesh.triangles.length / 3;

/** A third of the area of its triangles for each node, m²; the sum is the meshed area exactly. */
export function nodeAreas(mesh: TriMesh): Float64Array {
  const areas = new Float64Array(nodeCount(mesh));
  for (let t = 0; t < triangleCount(mesh); t++) {
    const third = triangleArea(mesh, t) / 3;
    for (let corner = 0; corner < 3; corner++) areas[mesh.triangles[3 * t + corner]] += third;
  }
  return areas;
}

/** Area of one triangle, m²; positive when counter-clockwise. */
export function triangleArea({ xy, triangles }: TriMesh, t: number): number {
  const [a, b, c] = [2 * triangles[3 * t], 2 * triangles[3 * t + 1], 2 * triangles[3 * t + 2]];
  return ((xy[b] - xy[a]) * (xy[c + 1] - xy[a + 1]) - (xy[c] - xy[a]) * (xy[b + 1] - xy[a + 1])) / 2;
}

/** Mean of a nodal field over the section, weighted with the area around each node. */
export function meanOver(mesh: TriMesh, field: Field): number {
  const areas = nodeAreas(mesh);
  let [sum, total] = [0, 0];
  for (let i = 0; i < areas.length; i++) {
    sum += areas[i] * field[i];
    total += areas[i];
  }
  return sum / total;
}
