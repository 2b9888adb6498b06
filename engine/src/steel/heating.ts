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
 * where the change lags. Valid from 20 to 1250 °C; both ends are carried on. Keep the law you get: it holds a table.
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

const cells = 1024;

/** A table even in enthalpy gives the cell; Newton inside it gives the last digits in two or three steps. */
function invertible(law: ThermalLaw): HeatingLaw {
  const [coldest, hottest] = [-50, 1600];
  const base = law.enthalpy(coldest);
  const perCell = (law.enthalpy(hottest) - base) / cells;
  const table = temperaturesEvenInEnthalpy(law, coldest, hottest);
  const temperatureOf = (enthalpy: number): number => {
    const place = (enthalpy - base) / perCell;
    if (!(place >= 0)) return coldest + (enthalpy - base) / law.heatCapacity(coldest);
    if (place >= cells) return hottest + (enthalpy - base - cells * perCell) / law.heatCapacity(hottest);
    const cell = Math.floor(place);
    return polished(law, enthalpy, table[cell], table[cell + 1], place - cell);
  };
  return { ...law, temperatureOf };
}

function polished(law: ThermalLaw, enthalpy: number, low: number, high: number, way: number): number {
  let T = low + way * (high - low);
  for (let step = 0; step < 8; step++) {
    const off = law.enthalpy(T) - enthalpy;
    if (Math.abs(off) <= 1e-10 * Math.abs(enthalpy) + 1e-6) return T;
    T = Math.min(high, Math.max(low, T - off / law.heatCapacity(T)));
  }
  return T;
}

function temperaturesEvenInEnthalpy(law: ThermalLaw, coldest: number, hottest: number): Float64Array {
  const base = law.enthalpy(coldest);
  const perCell = (law.enthalpy(hottest) - base) / cells;
  const table = new Float64Array(cells + 1);
  for (let cell = 0; cell <= cells; cell++)
    table[cell] = bisected(law, base + cell * perCell, coldest, hottest);
  return table;
}

function bisected(law: ThermalLaw, enthalpy: number, low: number, high: number): number {
  while (high - low > 1e-10 * Math.abs(high) + 1e-10) {
    const middle = (low + high) / 2;
    if (law.enthalpy(middle) < enthalpy) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
