import { type Bar, placeNames } from '../../bar/bar.ts';
import { meanEnthalpy } from '../../bar/heat-content.ts';
import type { Field } from '../../outcome/field.ts';
import { meanOver, type TriMesh } from '../../section/mesh.ts';
import { austenite } from '../../steel/austenite.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { pearlite } from '../../steel/pearlite.ts';
import type { Cooling } from './cooling.ts';

/**
 * K by which a place that started with other temperatures differs from the middle when it leaves: it runs ahead on the
 * middle's own curve by the time that the middle took to its mean. 30 K at the start leave 0.1 to 0.3 K.
 */
export function endOffset(mesh: TriMesh, start: Field, { times, temperature }: Cooling): number {
  const last = times.length - 1;
  const wanted = meanOver(mesh, start);
  const mean = (row: number) => meanOver(mesh, temperature[row]);
  let row = 1;
  while (row < last && mean(row) > wanted) row++;
  const [before, after] = [mean(row - 1), mean(row)];
  const ahead = times[row - 1] + ((before - wanted) / (before - after)) * (times[row] - times[row - 1]);
  const slope = (mean(last) - mean(last - 1)) / (times[last] - times[last - 1]);
  return Number.isFinite(ahead) ? slope * ahead : 0;
}

/**
 * Heat of the whole bar by name, J. 'lag' is not a flow: one reversible law keeps the books of the line, and steel that
 * is still austenite below Ac3 holds more heat than that law says. Head and tail lose their heat in the middle's shares.
 */
export function energyGained(before: Bar, after: Bar, cooling: Cooling): Record<string, number> {
  const law = heatingLaw(before.grade);
  const book = (bar: Bar, place: (typeof placeNames)[number]) =>
    meanEnthalpy(before.mesh, bar[place].temperature, law);
  const change = (place: (typeof placeNames)[number]) => book(after, place) - book(before, place);
  const last = cooling.temperature.length - 1;
  const lag = (row: number, bar: Bar) => heatIn(before.mesh, cooling, row) - book(bar, 'middle');
  const perKg: Record<string, number> = { lag: lag(0, before) - lag(last, after) };
  for (const [name, heat] of Object.entries(cooling.gained))
    perKg[name] = (heat * before.length) / before.mass;
  const shares =
    placeNames.reduce((sum, place) => sum + change(place) / change('middle'), 0) / placeNames.length;
  return Object.fromEntries(Object.entries(perKg).map(([name, heat]) => [name, heat * before.mass * shares]));
}

/** Mean heat of a row of the cooling, phases as they were, J/kg. */
function heatIn(mesh: TriMesh, { temperature, pearlite: share }: Cooling, row: number): number {
  const heat = Float64Array.from(
    temperature[row],
    (T, i) => (1 - share[row][i]) * austenite.enthalpy(T) + share[row][i] * pearlite.enthalpy(T),
  );
  return meanOver(mesh, heat);
}
