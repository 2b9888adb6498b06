import { type Factor, factor, solve } from '../../numerics/ldlt.ts';
import type { Field } from '../../outcome/field.ts';
import { contactHeat } from '../roll-contact/roll-contact.ts';
import type { ElementGeometry } from './element-geometry.ts';
import type { Grid } from './grid.ts';
import type { BiteHeat } from './problem.ts';
import { scalarMatrix } from './scalar-matrix.ts';
import type { Touching } from './touching.ts';

/** Room for the temperatures of one march: how long each node has touched a roll, s, and the matrix of a step. */
export interface HeatRoom {
  readonly touched: Float64Array;
  readonly matrix: Float64Array;
  readonly right: Float64Array<ArrayBuffer>;
  factored: Factor | undefined;
}

export const heatRoom = (grid: Grid): HeatRoom => ({
  touched: new Float64Array(grid.nodes),
  matrix: new Float64Array(grid.scalar.pattern.row.length),
  right: new Float64Array(grid.nodes),
  factored: undefined,
});

/** Work turned to heat in one step, J/m³ at each node: all of the deformation's, half of the friction's. */
export function workHeat(
  { nodes, elements, quads }: Grid,
  geometry: ElementGeometry,
  power: Field,
  { node, slipPower }: Touching,
  length: number,
  duration: number,
): Float64Array {
  const [heat, area] = [new Float64Array(nodes), new Float64Array(nodes)];
  for (let k = 0; k < elements; k++) {
    for (let a = 0; a < 4; a++) {
      heat[quads[4 * k + a]] += power[k] / length / 4;
      area[quads[4 * k + a]] += geometry.area[k] / 4;
    }
  }
  for (let c = 0; c < node.length; c++) heat[node[c]] += slipPower[c] / 2;
  for (let i = 0; i < nodes; i++) heat[i] *= duration / area[i];
  return heat;
}

/**
 * Temperatures after one step, in place: warmed by work, chilled by the rolls as two thick bodies in contact, evened out
 * by conduction (backward Euler, masses lumped at the nodes). The chill is kept exactly; its depth only as finely as
 * the mesh allows. False when the step cannot be solved.
 */
export function heatStep(
  grid: Grid,
  geometry: ElementGeometry,
  { heatCapacity, conductivity, contact, rollTemperature }: BiteHeat,
  work: Field,
  touching: Touching,
  duration: number,
  temperature: Float64Array,
  room: HeatRoom,
): boolean {
  const { matrix, right, touched } = room;
  const { columnStart } = grid.scalar.pattern;
  scalarMatrix(grid, geometry, conductivity * duration, 0, matrix);
  right.fill(0);
  for (let k = 0; k < grid.elements; k++) {
    for (let a = 0; a < 4; a++) {
      const i = grid.quads[4 * k + a];
      const mass = geometry.area[k] / 4;
      matrix[columnStart[i]] += mass * heatCapacity;
      right[i] += mass * (heatCapacity * temperature[i] + work[i]);
    }
  }
  const now = new Float64Array(grid.nodes);
  for (let c = 0; c < touching.count; c++) {
    const i = touching.node[c];
    if (now[i] === 0) now[i] = touched[i] + duration;
    const taken = contactHeat(contact, now[i]) - contactHeat(contact, touched[i]);
    right[i] += taken * touching.share[c] * (rollTemperature - temperature[i]);
  }
  touched.set(now);
  const factored = factor(grid.scalar.symbolic, matrix, room.factored ? { into: room.factored } : {});
  if (!factored.ok) return false;
  room.factored = factored.value;
  solve(factored.value, right, right);
  temperature.set(right);
  return true;
}
