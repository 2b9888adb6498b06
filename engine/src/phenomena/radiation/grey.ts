/** W/m²K⁴, Stefan and Boltzmann (CODATA 2018). */
export const stefanBoltzmann = 5.670374419e-8;

export const kelvin = (celsius: number): number => celsius + 273.15;

/** σT⁴, W/m², of a black body at °C. Multiplied out: a general power costs ten times as much. */
export function blackEmission(celsius: number): number {
  const K = kelvin(celsius);
  return stefanBoltzmann * K * K * K * K;
}

/** d(σT⁴)/dT, W/m²K. */
export function blackEmissionSlope(celsius: number): number {
  const K = kelvin(celsius);
  return 4 * stefanBoltzmann * K * K * K;
}

/**
 * Emissivity of hot scaled steel: 0.8 ± 0.05 from 600 to 1250 °C. A thermography handbook has it rise from 0.79 (200 °C)
 * to 0.89 (1227 °C), a polynomial from memory has it fall from 0.90 to 0.82; between them a constant can be defended.
 */
export const scaledSteel = 0.8;
