import type { Field } from '../outcome/field.ts';
import { type TriMesh, triangleArea, triangleCount } from '../section/mesh.ts';

/** Each side of a triangle is cut in three. Sixteen samples find the same heat within a tenth of a kelvin. */
const cuts = 3;

/** Shape functions of a triangle's three corners in the middles of the equal triangles that it is cut into. */
const shares = middles();
const samples = cuts * cuts;

function middles(): Float64Array {
  const rows: number[] = [];
  const add = (p: number, q: number) => rows.push(p / cuts, q / cuts, 1 - (p + q) / cuts);
  for (let i = 0; i < cuts; i++) {
    for (let j = 0; i + j < cuts; j++) {
      add(i + 1 / 3, j + 1 / 3);
      if (i + j + 1 < cuts) add(i + 2 / 3, j + 2 / 3);
    }
  }
  return Float64Array.from(rows);
}

/** x0, y0, x1, y1, … of the samples in every triangle, triangle by triangle, m. */
export function samplesIn({ xy, triangles }: TriMesh): Float64Array {
  const points = new Float64Array((triangles.length / 3) * samples * 2);
  for (let t = 0, k = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [2 * triangles[t], 2 * triangles[t + 1], 2 * triangles[t + 2]];
    for (let s = 0; s < shares.length; s += 3, k += 2) {
      const [p, q, r] = [shares[s], shares[s + 1], shares[s + 2]];
      points[k] = p * xy[a] + q * xy[b] + r * xy[c];
      points[k + 1] = p * xy[a + 1] + q * xy[b + 1] + r * xy[c + 1];
    }
  }
  return points;
}

/**
 * Mends nodal values in place by samples of what they stand for: one step of the projection on shape functions, with
 * each node's own area in place of the mass matrix. What a sample has more than the nodes around it goes to them by
 * their shape functions. Nothing changes where the nodes say it all, as with a linear field; the sum of area times
 * value over the nodes becomes that over the samples.
 */
export function mend(nodal: Float64Array, sampled: Field, mesh: TriMesh, areas: Field): void {
  const missing = new Float64Array(nodal.length);
  const count = triangleCount(mesh);
  for (let t = 0, k = 0; t < count; t++) {
    const each = triangleArea(mesh, t) / samples;
    const [a, b, c] = [mesh.triangles[3 * t], mesh.triangles[3 * t + 1], mesh.triangles[3 * t + 2]];
    for (let s = 0; s < shares.length; s += 3, k++) {
      const [p, q, r] = [shares[s], shares[s + 1], shares[s + 2]];
      const more = each * (sampled[k] - p * nodal[a] - q * nodal[b] - r * nodal[c]);
      missing[a] += p * more;
      missing[b] += q * more;
      missing[c] += r * more;
    }
  }
  for (let i = 0; i < nodal.length; i++) nodal[i] += missing[i] / areas[i];
}
