import { referenceTemperature, type ThermalLaw } from './thermal.ts';

/**
 * Pearlite of a 0.8 % C steel. Heat capacity: least-squares parabola through interval means of a handbook table
 * between 50 and 700 °C, within 10 J/kgK of each. Conductivity: the table itself, every 100 °C, linear between.
 * The parabola and the last slope are carried on to any temperature; undercooled or superheated pearlite needs that.
 */
export const pearlite: ThermalLaw = {
  name: 'Pearlite, 0.8 % C',
  source: 'table of the Woolman and Mottram type for 0.8 % C plain carbon steel',
  status: 'from memory, unconfirmed',
  validity: { temperature: { low: 20, high: 727, unit: 'C' } },
  low: 20,
  high: 727,
  enthalpy: (T) => integral(T) - integral(referenceTemperature),
  heatCapacity: (T) => 467 + T * (0.305 + 2.13e-4 * T),
  conductivity,
};

const integral = (T: number): number => T * (467 + T * (0.305 / 2 + (2.13e-4 / 3) * T));

/** W/mK at 0, 100 … 700 °C. */
const tabulated = new Float64Array([49.8, 48.1, 45.2, 41.4, 38.1, 35.2, 32.7, 30.1]);

function conductivity(T: number): number {
  const step = Math.min(6, Math.max(0, Math.floor(T / 100)));
  const low = tabulated[step];
  return low + (tabulated[step + 1] - low) * (T / 100 - step);
}
