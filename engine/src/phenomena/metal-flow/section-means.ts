import type { Field } from '../../outcome/field.ts';
import { quadArea, quadCount } from './quad-mesh.ts';
import type { FlowSolution } from './solution.ts';

/** Mean of a nodal field over the section at the node places `xy`, each element by its area and its four nodes. */
export function meanOfNodes({ mesh }: FlowSolution, xy: Field, field: Field): number {
  let [sum, area] = [0, 0];
  for (let k = 0; k < quadCount(mesh); k++) {
    const own = quadArea(mesh.quads, xy, k);
    area += own;
    for (let i = 0; i < 4; i++) sum += (own * field[mesh.quads[4 * k + i]]) / 4;
  }
  return sum / area;
}

/** Mean over the section of a field that has one value per element. */
export function meanOfElements({ mesh }: FlowSolution, xy: Field, field: Field): number {
  let [sum, area] = [0, 0];
  for (let k = 0; k < quadCount(mesh); k++) {
    const own = quadArea(mesh.quads, xy, k);
    sum += own * field[k];
    area += own;
  }
  return sum / area;
}
