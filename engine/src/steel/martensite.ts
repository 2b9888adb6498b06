import type { Law } from './law.ts';

/**
 * Koistinen and Marburger 1959: share of the remaining austenite that turns to martensite when it is cooled to T, °C,
 * below the start Ms: 1 − exp(−0.011 (Ms − T)). Zero above Ms. Ms of rail steels is about 230 to 260 °C; with normal
 * cooling nothing is left to transform there, so any martensite in a result is a warning.
 */
export const martensiteShare = (T: number, start = martensiteStart): number =>
  T < start ? -Math.expm1(-0.011 * (start - T)) : 0;

/** °C, middle of the range for rail steels. */
export const martensiteStart = 245;

export const koistinenMarburger: Law = {
  name: 'Koistinen-Marburger martensite',
  source: 'Koistinen and Marburger 1959; Ms for rail steels',
  status: 'from memory, unconfirmed',
  validity: { temperature: { low: 20, high: martensiteStart, unit: 'C' } },
};
