import type { Composition } from '../../steel/grade.ts';
import type { Validity } from '../../steel/law.ts';

/**
 * Ekelund's resistance of hot steel: static k and viscosity η, in the units he wrote, kgf/mm² and kgf·s/mm². t in °C,
 * composition in mass %, speed in m/s. k = (14 − 0.01 t)(1.4 + C + Mn + 0.3 Cr), from memory, unconfirmed. It is high
 * for rails: 110 MPa where Shida's mean gives 81 in the same pass (0.72 % C, 1100 °C), a contradiction left standing.
 * Floored at zero above 1400 °C.
 */
export function ekelundResistance(T: number, { C, Mn, Cr }: Composition, speed: number): EkelundResistance {
  const heat = Math.max(0, 14 - 0.01 * T);
  return { k: heat * (1.4 + C + Mn + 0.3 * Cr), eta: 0.01 * heat * speedFactor(speed) };
}

export interface EkelundResistance {
  readonly k: number;
  readonly eta: number;
}

/** 1 below 6 m/s, then 0.8, 0.65 and from 15 m/s 0.6. */
function speedFactor(speed: number): number {
  if (speed < 6) return 1;
  if (speed < 10) return 0.8;
  return speed < 15 ? 0.65 : 0.6;
}

/** Where Ekelund saw it hold. */
export const ekelundValidity: Validity = {
  temperature: { low: 800, high: 1300, unit: 'C' },
  manganese: { low: 0, high: 1, unit: 'one' },
};
