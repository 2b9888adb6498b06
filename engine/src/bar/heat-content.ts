import type { Field } from '../outcome/field.ts';
import { meanOver, nodeAreas, type TriMesh } from '../section/mesh.ts';
import { heatingLaw } from '../steel/heating.ts';
import type { ThermalLaw } from '../steel/thermal.ts';
import { type Bar, placeNames } from './bar.ts';
import type { Balance } from './station.ts';

/** Mean of the enthalpy over a section, J/kg above 20 °C, weighted with the area around each node. */
export function meanEnthalpy(mesh: TriMesh, temperature: Field, law: ThermalLaw): number {
  return meanOver(
    mesh,
    Float64Array.from({ length: temperature.length }, (_, i) => law.enthalpy(temperature[i])),
  );
}

/** Heat in the whole bar, J above 20 °C: its mass times the mean of head, middle and tail. */
export function heatContent(bar: Bar, law: ThermalLaw = heatingLaw(bar.grade)): number {
  const areas = nodeAreas(bar.mesh);
  let [sum, total] = [0, 0];
  for (let i = 0; i < areas.length; i++) {
    total += areas[i];
    for (const place of placeNames) sum += areas[i] * law.enthalpy(bar[place].temperature[i]);
  }
  return (bar.mass * sum) / (placeNames.length * total);
}

/**
 * The ledger of a visit whose losses of mass and gains of heat are known by name, both for the whole bar. What the two
 * heat contents leave open is entered as 'unaccounted' when it is more than round-off, so that a reader can see it.
 */
export function balanceOf(
  before: Bar,
  after: Bar,
  massLostKg: Readonly<Record<string, number>>,
  energyGainedJ: Readonly<Record<string, number>>,
  law: ThermalLaw = heatingLaw(before.grade),
): Balance {
  const [energyInJ, energyOutJ] = [heatContent(before, law), heatContent(after, law)];
  const named = Object.values(energyGainedJ).reduce((sum, each) => sum + each, 0);
  const open = energyOutJ - energyInJ - named;
  const roundOff = 1e-12 * (Math.abs(energyInJ) + Math.abs(energyOutJ));
  return {
    massInKg: before.mass,
    massOutKg: after.mass,
    massLostKg: { ...massLostKg },
    energyInJ,
    energyOutJ,
    energyGainedJ: Math.abs(open) > roundOff ? { ...energyGainedJ, unaccounted: open } : { ...energyGainedJ },
  };
}
