import type { ElementGeometry } from './element-geometry.ts';
import type { Grid } from './grid.ts';

/** Fills `matrix` with conduction ∫ ∇N·∇N + storage ∫ N N of one value per node. */
export function scalarMatrix(
  { elements, scalar: { slot } }: Grid,
  { laplace, mass }: ElementGeometry,
  conduction: number,
  storage: number,
  matrix: Float64Array,
): void {
  matrix.fill(0);
  for (let k = 0; k < elements; k++) {
    let at = 10 * k;
    for (let a = 0; a < 4; a++) {
      for (let b = 0; b <= a; b++, at++) {
        matrix[slot[16 * k + 4 * a + b]] += conduction * laplace[at] + storage * mass[at];
      }
    }
  }
}
