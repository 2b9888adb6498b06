import { intervalOf } from '../numerics/interpolation.ts';
import { austenite } from './austenite.ts';
import { criticalPoints } from './critical-points.ts';
import type { Grade } from './grade.ts';
import { pearlite } from './pearlite.ts';
import type { ThermalLaw } from './thermal.ts';
import { en1993 } from './thermal-en1993.ts';

/** A thermal law that can be read backwards. */
export interface HeatingLaw extends ThermalLaw {
  /** °C at J/kg; the inverse of `enthalpy` to 1e-9 of the value, between −50 and 1600 °C; beyond, by the end slopes. */
  readonly temperatureOf: (enthalpy: number) => number;
}

export const heatingBases = ['pearlite to austenite', 'EN 1993-1-2'] as const;
export type HeatingBasis = (typeof heatingBases)[number];

/**
 * Heat in a rail steel from cold to furnace, one reversible law for furnace, descaler and stands: pearlite below Ac1,
 * austenite above Ac3, a smooth change of share between them that carries the latent heat. Not for the cooling bed,
 * where the change lags. Valid from 20 to 1250 °C; both ends are carried on.
 */
export function heatingLaw(grade: Grade, basis: HeatingBasis = 'pearlite to austenite'): HeatingLaw {
  return invertible(basis === 'EN 1993-1-2' ? en1993 : smeared(grade));
}

function smeared(grade: Grade): ThermalLaw {
  const { ac1, ac3 } = criticalPoints(grade.composition);
  return {
    name: `Pearlite to austenite, ${grade.name}`,
    source: `pearlite and austenite laws, latent heat spread over ${ac1.toFixed(0)} to ${ac3.toFixed(0)} °C`,
    status: 'from memory, unconfirmed',
    validity: { temperature: { low: 20, high: 1250, unit: 'C' } },
    low: 20,
    high: 1250,
    enthalpy(T) {
      if (T <= ac1) return pearlite.enthalpy(T);
      if (T >= ac3) return austenite.enthalpy(T);
      const cold = pearlite.enthalpy(T);
      return cold + austeniteShare(T, ac1, ac3) * (austenite.enthalpy(T) - cold);
    },
    heatCapacity(T) {
      if (T <= ac1) return pearlite.heatCapacity(T);
      if (T >= ac3) return austenite.heatCapacity(T);
      const share = austeniteShare(T, ac1, ac3);
      const sensible = (1 - share) * pearlite.heatCapacity(T) + share * austenite.heatCapacity(T);
      return sensible + austeniteShareSlope(T, ac1, ac3) * (austenite.enthalpy(T) - pearlite.enthalpy(T));
    },
    conductivity(T) {
      if (T <= ac1) return pearlite.conductivity(T);
      if (T >= ac3) return austenite.conductivity(T);
      const share = austeniteShare(T, ac1, ac3);
      return (1 - share) * pearlite.conductivity(T) + share * austenite.conductivity(T);
    },
  };
}

/** Share of austenite on heating, 0 at Ac1 to 1 at Ac3, smooth at both ends (a cubic; its shape is assumed). */
export function austeniteShare(T: number, ac1: number, ac3: number): number {
  const way = Math.min(1, Math.max(0, (T - ac1) / (ac3 - ac1)));
  return way * way * (3 - 2 * way);
}

function austeniteShareSlope(T: number, ac1: number, ac3: number): number {
  const way = (T - ac1) / (ac3 - ac1);
  return (6 * way * (1 - way)) / (ac3 - ac1);
}

/** °C and cells of the table that starts the search; 12.5 K to a cell. */
const [coldest, hottest, cells] = [-50, 1600, 132];
const cell = (hottest - coldest) / cells;

/** The heat content at even temperatures brackets the answer; Newton from the chord gives the last digits. */
function invertible(law: ThermalLaw): HeatingLaw {
  const heats = Float64Array.from({ length: cells + 1 }, (_, k) => law.enthalpy(coldest + k * cell));
  const temperatureOf = (enthalpy: number): number => {
    if (!(enthalpy >= heats[0])) return coldest + (enthalpy - heats[0]) / law.heatCapacity(coldest);
    if (enthalpy >= heats[cells]) return hottest + (enthalpy - heats[cells]) / law.heatCapacity(hottest);
    const k = intervalOf(heats, enthalpy);
    const way = (enthalpy - heats[k]) / (heats[k + 1] - heats[k]);
    return polished(law, enthalpy, coldest + k * cell, way);
  };
  return { ...law, temperatureOf };
}

/** Newton inside one cell; a step that would leave what is still in question halves it instead. */
function polished(law: ThermalLaw, enthalpy: number, from: number, way: number): number {
  let [low, high] = [from, from + cell];
  let T = from + way * cell;
  for (let step = 0; step < 60; step++) {
    const off = law.enthalpy(T) - enthalpy;
    if (Math.abs(off) <= 1e-10 * Math.abs(enthalpy) + 1e-6) return T;
    if (off > 0) high = T;
    else low = T;
    T -= off / law.heatCapacity(T);
    if (!(T >= low && T <= high)) T = (low + high) / 2;
  }
  return T;
}
