import { contactLength, draughtOf, meanRate, meanWidth } from './contact.ts';
import { ekelundResistance, ekelundValidity } from './ekelund-resistance.ts';
import type { ForceLaw } from './force-law.ts';
import type { HotPass, RubbedDraught } from './pass.ts';

/**
 * Ekelund 1933: p = (1 + m)(k + η ε̇), P = p L b_m, with his own resistance of the steel instead of the pass's flow
 * stress. From memory, unconfirmed. Likely high for rails: ekelund-resistance.ts says by how much.
 */
export const ekelundForce: ForceLaw = {
  name: 'Ekelund',
  source: 'Ekelund 1933, with his own resistance',
  status: 'from memory, unconfirmed',
  validity: ekelundValidity,
  force: (pass) => ekelundPressure(pass) * contactLength(pass) * meanWidth(pass),
};

/** Pa. */
export function ekelundPressure(pass: HotPass): number {
  const { k, eta } = ekelundResistance(pass.temperature, pass.composition, pass.speed);
  return 9.80665e6 * (1 + ekelundM(pass)) * (k + eta * meanRate(pass, pass.speed));
}

/** m = (1.6 μL − 1.2 Δh)/(h0 + h1): friction's share of the resistance, also the measure of his spread. */
export const ekelundM = (pass: RubbedDraught): number =>
  (1.6 * pass.friction * contactLength(pass) - 1.2 * draughtOf(pass)) / (pass.h0 + pass.h1);
