import type { Field } from '../../../outcome/field.ts';
import { type QuadMesh, quadArea } from '../quad-mesh.ts';

/**
 * The area that belongs to each node, m²: the integral of its shape function. Exact for straight edges: a sixth of the
 * element and a sixth of the triangle of the node with its two neighbours. Node values times these areas add up to the
 * integral of the field over the computed part.
 */
export function quadNodeAreas({ quads }: QuadMesh, xy: Field): Float64Array {
  const areas = new Float64Array(xy.length / 2);
  for (let k = 0; 4 * k < quads.length; k++) {
    const area = quadArea(quads, xy, k);
    for (let corner = 0; corner < 4; corner++) {
      const [before, node, after] = [3, 0, 1].map((step) => 2 * quads[4 * k + ((corner + step) % 4)]);
      const twice =
        (xy[after] - xy[node]) * (xy[before + 1] - xy[node + 1]) -
        (xy[before] - xy[node]) * (xy[after + 1] - xy[node + 1]);
      areas[node / 2] += (area + twice / 2) / 6;
    }
  }
  return areas;
}
