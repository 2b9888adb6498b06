import type { Law } from '../../steel/law.ts';

/**
 * Ekelund's friction of hot steel on a roll, μ = K (1.05 − 0.0005 t), t in °C; carried on below 700 °C, and at least 0.1.
 *
 * K by roll, and the sources contradict each other:
 *   cast iron and rough steel 1 · ground steel 0.8 · chilled, smooth 0.55      a conference paper on roll roughness, read
 *   chilled and smooth steel 0.8 · ground steel 0.55                           usual handbook statement, from memory
 *   steel 1 · cast iron 0.8                                                    other textbooks, from memory
 * We keep the first, the only one read; measured spread of hot bars asked for 10 to 17 % more than strip values (2016).
 */
export const ekelundFriction = (T: number, K: number): number => Math.max(0.1, K * (1.05 - 0.0005 * T));

export const rollSurfaces = {
  'cast iron': 1,
  'rough steel': 1,
  'ground steel': 0.8,
  'chilled, smooth': 0.55,
} as const;
export type RollSurface = keyof typeof rollSurfaces;

export const ekelundFrictionLaw: Law = {
  name: 'Ekelund friction',
  source: 'conference paper on friction and roll roughness; handbooks differ on which roll has which K',
  status: 'read in a published text',
  validity: { temperature: { low: 700, high: 1200, unit: 'C' } },
};

/**
 * Geleji's friction with speed, base − 0.0005 t − 0.056 v; t in °C, v in m/s. Cast iron 0.94 (read in an exam's
 * solution), steel 1.05 and ground steel 0.82 (from memory). Not below 0.1, where fast passes would take it.
 */
export const gelejiFriction = (T: number, speed: number, rolls: GelejiRolls): number =>
  Math.max(0.1, gelejiBase[rolls] - 0.0005 * T - 0.056 * speed);

const gelejiBase = { steel: 1.05, 'cast iron': 0.94, 'ground steel': 0.82 } as const;
export type GelejiRolls = keyof typeof gelejiBase;

export const gelejiFrictionLaw: Law = {
  name: 'Geleji friction',
  source: 'cast iron from a published mill-operator exam; steel and ground steel from memory',
  status: 'read in a published text',
  validity: { temperature: { low: 700, high: 1200, unit: 'C' }, speed: { low: 0, high: 5, unit: 'mPerS' } },
};
