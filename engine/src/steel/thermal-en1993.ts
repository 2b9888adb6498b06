import { referenceTemperature, type ThermalLaw } from './thermal.ts';

/**
 * Structural carbon steel on heating, EN 1993-1-2:2005 clause 3.4.1, 20 to 1200 °C; c = 650 is carried on above,
 * the first polynomial below. The peak sits at 735 °C, where a rail transforms on heating, not on cooling: use it for
 * the furnace or for comparison, never for the cooling bed. The small steps at 600 and 800 °C are the standard's own.
 */
export const en1993: ThermalLaw = {
  name: 'EN 1993-1-2 carbon steel',
  source: 'EN 1993-1-2:2005 clause 3.4.1, re-typed in several public sources that agree',
  status: 'read in a published text',
  validity: { temperature: { low: 20, high: 1200, unit: 'C' } },
  low: 20,
  high: 1200,
  enthalpy,
  heatCapacity,
  conductivity: (T) => (T < 800 ? 54 - 3.33e-2 * T : 27.3),
};

function heatCapacity(T: number): number {
  if (T < 600) return 425 + T * (0.773 + T * (-1.69e-3 + T * 2.22e-6));
  if (T < 735) return 666 + 13002 / (738 - T);
  if (T < 900) return 545 + 17820 / (T - 731);
  return 650;
}

function enthalpy(T: number): number {
  if (T < 600) return ferritic(T) - ferritic(referenceTemperature);
  if (T < 735) return at600 + 666 * (T - 600) - 13002 * Math.log((738 - T) / 138);
  if (T < 900) return at735 + 545 * (T - 735) + 17820 * Math.log((T - 731) / 4);
  return at900 + 650 * (T - 900);
}

const ferritic = (T: number): number => T * (425 + T * (0.773 / 2 + T * (-1.69e-3 / 3 + (T * 2.22e-6) / 4)));
const at600 = ferritic(600) - ferritic(referenceTemperature);
const at735 = at600 + 666 * 135 - 13002 * Math.log(3 / 138);
const at900 = at735 + 545 * 165 + 17820 * Math.log(169 / 4);

/** Length change from 20 °C by the same clause; its plateau from 750 to 860 °C is austenite forming. */
export function en1993Elongation(T: number): number {
  if (T < 750) return T * (1.2e-5 + 0.4e-8 * T) - 2.416e-4;
  return T < 860 ? 1.1e-2 : 2e-5 * T - 6.2e-3;
}
