import type { Law } from './law.ts';

/** Pa at 20 °C; rail steels have 207 to 210 GPa (handbooks, from memory). */
export const coldModulus = 207e9;

/** Factors at 20, 100, 200 … 1200 °C. */
const stiffness = new Float64Array([1, 1, 0.9, 0.8, 0.7, 0.6, 0.31, 0.13, 0.09, 0.0675, 0.045, 0.0225, 0]);
const proportional = new Float64Array([
  1, 1, 0.807, 0.613, 0.42, 0.36, 0.18, 0.075, 0.05, 0.0375, 0.025, 0.0125, 0,
]);

/** Young's modulus, Pa, at T in °C: EN 1993-1-2 table 3.1 (kE), read second-hand; 1 below 20 °C, 0 from 1200 °C. */
export const elasticModulus = (T: number): number => coldModulus * stepped(stiffness, T);

/**
 * Yield at T over yield at 20 °C for stress work, by the proportional limit kp of the same table (from memory). The
 * table's ky must not be used here: it is taken at 2 % strain and stays 1.0 to 400 °C, where tests at 0.2 % gave 0.76.
 */
export const yieldFactor = (T: number): number => stepped(proportional, T);

function stepped(factors: Float64Array, T: number): number {
  if (T <= 100) return 1;
  if (T >= 1200) return 0;
  const step = Math.floor(T / 100);
  return factors[step] + (factors[step + 1] - factors[step]) * (T / 100 - step);
}

export const elasticLaw: Law = {
  name: 'EN 1993-1-2 reduction factors',
  source: 'EN 1993-1-2 table 3.1, read in a text that quotes it',
  status: 'read in a published text',
  validity: { temperature: { low: 20, high: 1200, unit: 'C' } },
};
