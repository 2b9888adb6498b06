import { pearlite } from './pearlite.ts';
import type { ThermalLaw } from './thermal.ts';

/**
 * Heat that austenite gives up when it becomes pearlite, J/kg at °C. Plain eutectoid steel has 82.0 kJ/kg at 727 °C
 * (Hagel, Pound and Mehl 1956, calorimetry, 5 %); about 1 % Mn lowers it, interpolated to 80 kJ/kg. Placed at 680 °C,
 * in the middle of an air-cooled rail's transformation, it means 71 kJ/kg at 727 °C, below the measured value.
 */
export const latentHeat = { perKg: 80e3, at: 680 } as const;

/**
 * Austenite of a rail steel: linear heat capacity between pure γ-iron (609 J/kgK at 927 °C) and handbook means of
 * 0.8 % C steel (615 at 775 °C, 650 at 1200 °C), within 20 J/kgK of both; linear conductivity through 24.3 W/mK at
 * 800 °C and 30.1 at 1200 °C. Both lines are carried on outside 600 to 1250 °C. Its enthalpy is above that of
 * pearlite by `latentHeat`, which makes the heat of any path depend on its ends alone.
 */
export const austenite: ThermalLaw = {
  name: 'Austenite, 0.8 % C',
  source: 'line between handbook means of 0.8 % C steel and data of pure γ-iron',
  status: 'from memory, unconfirmed',
  validity: { temperature: { low: 600, high: 1250, unit: 'C' } },
  low: 600,
  high: 1250,
  enthalpy: (T) => offset + T * (510 + (0.115 / 2) * T),
  heatCapacity: (T) => 510 + 0.115 * T,
  conductivity: (T) => 12.7 + 0.0145 * T,
};

const offset =
  pearlite.enthalpy(latentHeat.at) + latentHeat.perKg - latentHeat.at * (510 + (0.115 / 2) * latentHeat.at);
