import { factor, solve } from '../../numerics/ldlt.ts';
import type { Field } from '../../outcome/field.ts';
import { screeningLength } from './axial-shear.ts';
import { type Bite, skinLength } from './bite.ts';
import { geometryFor, measureElements } from './element-geometry.ts';
import type { March } from './marched.ts';
import { scalarMatrix } from './scalar-matrix.ts';

/**
 * How much the skin at the rolls lags behind the section's mean speed at the neutral line, as a share of that speed:
 * plane sections are really curved, because flow lines that turn inwards must shear (∂u/∂y = −∂v/∂x). The screened
 * Poisson field u′ of zero mean that fits this slope best; scaled by x³/(x³ + 0.4), x = contact length over mean
 * thickness, fitted to three own full solutions of flat passes.
 */
export function lagOfSkin({ grid, length }: Bite, { sections, steps }: March): number {
  const neutral = neutralStep(steps);
  if (neutral === undefined || neutral === 0) return 0;
  const step = steps[neutral];
  const { xy } = sections[neutral];
  const spacing = (steps[neutral - 1].length + step.length) / 2;
  const bend = step.velocity.map((v, at) => (steps[neutral - 1].velocity[at] - v) / spacing);
  const field = fittedField(grid, xy, bend);
  if (!field) return 0;
  const { node, share, count } = step.touching;
  let [sum, weight] = [0, 0];
  for (let c = 0; c < count; c++) {
    sum += share[c] * field[node[c]];
    weight += share[c];
  }
  const thickness = (2 * meanOf(sections.map(({ area }) => area))) / meanContact(steps);
  const x3 = (length / thickness) ** 3;
  return weight > 0 ? ((x3 / (x3 + 0.4)) * sum) / weight / step.speed : 0;
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean length of skin in contact where there is contact, m. */
function meanContact(steps: March['steps']): number {
  const touching = steps.map(({ touching: { share } }) => share.reduce((sum, each) => sum + each, 0));
  return meanOf(touching.filter((each) => each > 0));
}

/** The step after which the mean slip along the bar is positive. */
export function neutralStep(steps: March['steps'], roll?: number): number | undefined {
  let before: number | undefined;
  for (let i = 0; i < steps.length; i++) {
    const slip = meanSlip(steps[i].touching, roll);
    if (slip === undefined) continue;
    if (before !== undefined && before < 0 && slip >= 0) return i;
    before = slip;
  }
  return undefined;
}

/** Mean slip along the bar, m/s, over all contacts or those of one roll, weighted with their friction. */
export function meanSlip(
  { count, roll, friction, slip }: March['steps'][number]['touching'],
  only?: number,
): number | undefined {
  let [sum, weight] = [0, 0];
  for (let c = 0; c < count; c++) {
    if (only !== undefined && roll[c] !== only) continue;
    sum += friction[c] * slip[c];
    weight += friction[c];
  }
  return weight > 0 ? sum / weight : undefined;
}

function fittedField(grid: Bite['grid'], xy: Field, bend: Field): Float64Array | undefined {
  const geometry = geometryFor(grid);
  if (!(measureElements(grid, xy, geometry) > 0)) return undefined;
  const area = geometry.area.reduce((sum, each) => sum + each, 0);
  const length = screeningLength(area, skinLength(grid, xy), 'plane');
  const matrix = new Float64Array(grid.scalar.pattern.row.length);
  scalarMatrix(grid, geometry, 1, 1 / (length * length), matrix);
  const right = new Float64Array(grid.nodes);
  const mass = new Float64Array(grid.nodes);
  for (let k = 0; k < grid.elements; k++) {
    let [x, y] = [0, 0];
    for (let a = 0; a < 4; a++) {
      const node = grid.quads[4 * k + a];
      x += bend[2 * node] / 4;
      y += bend[2 * node + 1] / 4;
      mass[node] += geometry.area[k] / 4;
    }
    for (let a = 0; a < 4; a++) {
      right[grid.quads[4 * k + a]] +=
        geometry.divergence[8 * k + 2 * a] * x + geometry.divergence[8 * k + 2 * a + 1] * y;
    }
  }
  const factored = factor(grid.scalar.symbolic, matrix);
  if (!factored.ok) return undefined;
  const field = solve(factored.value, right);
  const mean = field.reduce((sum, value, node) => sum + value * mass[node], 0) / area;
  return field.map((value) => value - mean);
}
