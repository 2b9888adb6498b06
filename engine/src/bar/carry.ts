import type { Field } from '../outcome/field.ts';
import { interpolated, locator } from '../section/locate.ts';
import { nodeAreas, type TriMesh } from '../section/mesh.ts';
import type { HeatingLaw } from '../steel/heating.ts';
import { keepWithin } from './carry-range.ts';
import { mend, samplesIn } from './carry-samples.ts';

/** Where a point of the new section was in the old one, m. */
export type Origin = (x: number, y: number) => readonly [x: number, y: number];

export interface Carried {
  /** °C at each node of the new mesh, one row per row given. */
  readonly temperatures: readonly Float64Array[];
  /** K added evenly to each row so that its mean enthalpy is what it was. */
  readonly corrections: readonly number[];
}

/**
 * Temperature fields of one section carried to another that was made from it: each new node asks where it came from, and
 * is then mended by what the triangles around it hold in truth, so that a steep skin neither fades nor is spread over a
 * coarser mesh. The heat per kilogram is kept by this where the origin keeps shares of area; what it does not keep is
 * made up to round-off by an even shift of each field, which is reported. Points from outside the old mesh take the
 * nearest boundary value. No node leaves the range of the old field before that shift.
 */
export function carried(
  from: TriMesh,
  to: TriMesh,
  origin: Origin,
  fields: readonly Field[],
  law: HeatingLaw,
): Carried {
  const old = locator(from);
  const nodes = old.interpolationAt(originsOf(to.xy, origin));
  const samples = old.interpolationAt(originsOf(samplesIn(to), origin));
  const [before, after] = [nodeAreas(from), nodeAreas(to)];
  const temperatures: Float64Array[] = [];
  const corrections: number[] = [];
  for (const field of fields) {
    const was = Float64Array.from(field, law.enthalpy);
    const heat = interpolated(nodes, was);
    mend(heat, interpolated(samples, was), to, after);
    keepWithin(heat, was, to, after);
    const row = heat.map(law.temperatureOf);
    corrections.push(shiftToHeat(row, after, meanOf(was, before), law));
    temperatures.push(row);
  }
  return { temperatures, corrections };
}

function originsOf(xy: Field, origin: Origin): Float64Array {
  const origins = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    const [x, y] = origin(xy[i], xy[i + 1]);
    origins[i] = x;
    origins[i + 1] = y;
  }
  return origins;
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

function meanOf(values: Field, areas: Field): number {
  let [sum, area] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    sum += areas[i] * values[i];
    area += areas[i];
  }
  return sum / area;
}
