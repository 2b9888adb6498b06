import { type Factor, factor, solve } from '../../numerics/ldlt.ts';
import type { Field } from '../../outcome/field.ts';
import type { ElementGeometry } from './element-geometry.ts';
import type { Grid } from './grid.ts';
import { scalarMatrix } from './scalar-matrix.ts';

/**
 * The shear stress along the bar that friction at the rolls spreads over the section, Orowan's inhomogeneity:
 * div grad ψ = ψ/l², ∂ψ/∂n = friction, τ = |grad ψ|. The screening keeps it near where it is made; the whole force is
 * kept, because the term in ψ/l² takes up exactly what the rim brings in. Unscreened, a rail's web would have to carry
 * all that foot and head do not balance, several times what it can bear.
 */
export interface AxialShear {
  readonly grid: Grid;
  readonly matrix: Float64Array;
  readonly psi: Float64Array<ArrayBuffer>;
  /** τ per element, Pa. */
  readonly shear: Float64Array;
  factored: Factor | undefined;
}

export const axialShearFor = (grid: Grid): AxialShear => ({
  grid,
  matrix: new Float64Array(grid.scalar.pattern.row.length),
  psi: new Float64Array(grid.nodes),
  shear: new Float64Array(grid.elements),
  factored: undefined,
});

/**
 * Share of 2 A/P over which the shear fades, by comparison with six own full solutions: of plane sections, and of sections
 * whose warping bears the smooth part of the shear itself.
 */
const screening = { plane: 0.5, warped: 0.25 };

export const screeningLength = (area: number, perimeter: number, how: keyof typeof screening): number =>
  (screening[how] * 2 * area) / perimeter;

/** Fills `field.shear` from the axial friction at the nodes, N per metre of bar. False when nothing can be solved. */
export function spreadShear(
  field: AxialShear,
  geometry: ElementGeometry,
  friction: Field,
  length: number,
): boolean {
  const { grid, matrix, psi, shear } = field;
  scalarMatrix(grid, geometry, 1, 1 / (length * length), matrix);
  const factored = factor(grid.scalar.symbolic, matrix, field.factored ? { into: field.factored } : {});
  if (!factored.ok) return false;
  field.factored = factored.value;
  solve(factored.value, friction, psi);
  for (let k = 0; k < grid.elements; k++) shear[k] = meanGradient(grid, geometry, psi, k);
  return true;
}

function meanGradient({ quads }: Grid, { divergence, area }: ElementGeometry, psi: Field, k: number): number {
  let [x, y] = [0, 0];
  for (let a = 0; a < 4; a++) {
    const value = psi[quads[4 * k + a]];
    x += divergence[8 * k + 2 * a] * value;
    y += divergence[8 * k + 2 * a + 1] * value;
  }
  return Math.hypot(x, y) / area[k];
}

/** What is left of the flow stress across the section when τ uses up part of it; not below 0.3. */
export function relief(shear: number, flowStress: number): number {
  const share = shear / flowStress;
  return Math.sqrt(Math.max(0.09, 1 - 3 * share * share));
}
