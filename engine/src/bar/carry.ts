import type { Field } from '../outcome/field.ts';
import { interpolated, locator } from '../section/locate.ts';
import { nodeAreas, type TriMesh } from '../section/mesh.ts';
import type { HeatingLaw } from '../steel/heating.ts';

/** Where a point of the new section was in the old one, m. */
export type Origin = (x: number, y: number) => readonly [x: number, y: number];

export interface Carried {
  /** °C at each node of the new mesh, one row per row given. */
  readonly temperatures: readonly Float64Array[];
  /** K added evenly to each row so that its mean enthalpy is what it was. */
  readonly corrections: readonly number[];
}

/**
 * Temperature fields of one section carried to another that was made from it: each new node asks where it came from.
 * The mean enthalpy over the section, and with it the heat per kilogram, is kept to round-off by an even shift of each
 * field, which is reported. Nodes that come from outside the old mesh take the nearest boundary value.
 */
export function carried(
  from: TriMesh,
  to: TriMesh,
  origin: Origin,
  fields: readonly Field[],
  law: HeatingLaw,
): Carried {
  const points = new Float64Array(to.xy.length);
  for (let i = 0; i < points.length; i += 2) points.set(origin(to.xy[i], to.xy[i + 1]), i);
  const interpolation = locator(from).interpolationAt(points);
  const [before, after] = [nodeAreas(from), nodeAreas(to)];
  const temperatures: Float64Array[] = [];
  const corrections: number[] = [];
  for (const field of fields) {
    const row = interpolated(interpolation, field);
    corrections.push(shiftToHeat(row, after, meanHeat(field, before, law), law));
    temperatures.push(row);
  }
  return { temperatures, corrections };
}

/** Shifts a field in place, K, until its mean enthalpy is the wanted one; Newton, at most eight steps. */
export function shiftToHeat(field: Float64Array, areas: Field, wanted: number, law: HeatingLaw): number {
  let total = 0;
  for (let step = 0; step < 8; step++) {
    let [heat, capacity, area] = [0, 0, 0];
    for (let i = 0; i < field.length; i++) {
      heat += areas[i] * law.enthalpy(field[i]);
      capacity += areas[i] * law.heatCapacity(field[i]);
      area += areas[i];
    }
    const shift = (wanted * area - heat) / capacity;
    for (let i = 0; i < field.length; i++) field[i] += shift;
    total += shift;
    if (Math.abs(shift) < 1e-11 * Math.abs(total) + 1e-12) break;
  }
  return total;
}

/** Heat put into each node, J/kg, turned into temperature, in place. */
export function warm(field: Float64Array, heat: Field, law: HeatingLaw): void {
  for (let i = 0; i < field.length; i++) field[i] = law.temperatureOf(law.enthalpy(field[i]) + heat[i]);
}

function meanHeat(field: Field, areas: Field, law: HeatingLaw): number {
  let [heat, area] = [0, 0];
  for (let i = 0; i < field.length; i++) {
    heat += areas[i] * law.enthalpy(field[i]);
    area += areas[i];
  }
  return heat / area;
}
