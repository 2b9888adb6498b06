import type { Law } from './law.ts';

/**
 * Heat in a steel as a function of temperature. Enthalpy counts from 20 °C and rises with temperature, so it can
 * be inverted. low and high, °C, repeat `validity.temperature`; outside them the law extends its last piece.
 */
export interface ThermalLaw extends Law {
  readonly low: number;
  readonly high: number;
  /** J/kg above 20 °C, at T in °C. */
  readonly enthalpy: (T: number) => number;
  /** J/kgK; the exact derivative of `enthalpy`. */
  readonly heatCapacity: (T: number) => number;
  /** W/mK. */
  readonly conductivity: (T: number) => number;
}

/** °C, where enthalpy and thermal strain are zero. */
export const referenceTemperature = 20;
