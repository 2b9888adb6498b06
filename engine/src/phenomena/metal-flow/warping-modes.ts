import { factor, solve } from '../../numerics/ldlt.ts';
import type { Field } from '../../outcome/field.ts';
import { geometryFor, measureElements } from './element-geometry.ts';
import type { Grid } from './grid.ts';
import { scalarMatrix } from './scalar-matrix.ts';

/**
 * Shapes in which the speed along the bar may differ over a section: the smoothest fields of zero mean, lowest modes
 * of div grad φ + λ φ = 0 with ∂φ/∂n = 0. In a rail the first sets head against foot, the second the web against both; in
 * a flat bar its edges against its middle. One value per node, of mean square 1 over the section.
 */
export function warpingModes(grid: Grid, xy: Field, count: number): Float64Array[] {
  const geometry = geometryFor(grid);
  if (count === 0 || !(measureElements(grid, xy, geometry) > 0)) return [];
  const mass = nodeMasses(grid, geometry.area);
  const area = mass.reduce((sum, each) => sum + each, 0);
  const matrix = new Float64Array(grid.scalar.pattern.row.length);
  scalarMatrix(grid, geometry, 1, 1 / area, matrix);
  const factored = factor(grid.scalar.symbolic, matrix);
  if (!factored.ok) return [];
  let modes = startFields(xy, count);
  for (let i = 0; i < iterations; i++) {
    orthonormalise(modes, mass, area);
    const weighted = modes.map((mode) => mode.map((value, node) => value * mass[node]));
    modes = smoothestFirst(
      weighted.map((mode) => solve(factored.value, mode)),
      mass,
    );
  }
  orthonormalise(modes, mass, area);
  return modes.slice(0, count);
}

/**
 * Any smooth start will do that has some of every mode; so many steps of inverse iteration, with so many fields to spare,
 * leave the lowest.
 */
const [iterations, spare] = [12, 5];

/** Powers of x and y, lowest degree first. */
const powers = [1, 2, 3, 4].flatMap((degree) =>
  Array.from({ length: degree + 1 }, (_, q) => [degree - q, q] as const),
);

function startFields(xy: Field, count: number): Float64Array[] {
  let size = 0;
  for (let at = 0; at < xy.length; at++) size = Math.max(size, Math.abs(xy[at]));
  return powers
    .slice(0, count + spare)
    .map(([p, q]) =>
      Float64Array.from(
        { length: xy.length / 2 },
        (_, node) => (xy[2 * node] / size) ** p * (xy[2 * node + 1] / size) ** q,
      ),
    );
}

export function nodeMasses({ nodes, elements, quads }: Grid, area: Field): Float64Array {
  const mass = new Float64Array(nodes);
  for (let k = 0; k < elements; k++) for (let a = 0; a < 4; a++) mass[quads[4 * k + a]] += area[k] / 4;
  return mass;
}

/** Of fields of one size before the solution: what is smooth it shrinks the least. */
function smoothestFirst(modes: readonly Float64Array[], mass: Field): Float64Array[] {
  const size = new Map(modes.map((mode) => [mode, product(mode, mode, mass)]));
  return modes.toSorted((a, b) => (size.get(b) ?? 0) - (size.get(a) ?? 0));
}

/** Takes the mean out, and each mode's part in those before it; scales to mean square 1. */
function orthonormalise(modes: readonly Float64Array[], mass: Field, area: number): void {
  modes.forEach((mode, m) => {
    centre(mode, mass, area);
    for (const before of modes.slice(0, m)) {
      const part = product(mode, before, mass) / area;
      for (let node = 0; node < mode.length; node++) mode[node] -= part * before[node];
    }
    const size = Math.sqrt(product(mode, mode, mass) / area);
    for (let node = 0; node < mode.length; node++) mode[node] /= size;
  });
}

export function centre(mode: Float64Array, mass: Field, area: number): void {
  let sum = 0;
  for (let node = 0; node < mode.length; node++) sum += mode[node] * mass[node];
  for (let node = 0; node < mode.length; node++) mode[node] -= sum / area;
}

function product(a: Field, b: Field, mass: Field): number {
  let sum = 0;
  for (let node = 0; node < mass.length; node++) sum += a[node] * b[node] * mass[node];
  return sum;
}
