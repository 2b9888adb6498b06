import { contactLength, draughtOf } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';
import type { FlatPass } from './pass.ts';

/**
 * Tselikov: closed solution of von Karman's equation with the arc replaced by its chord and slipping friction. From
 * memory, confirmed against our own numerical integration, above which it lies by 3 to 4 % (the chord's doing).
 * Holds while the rolls pull the bar through, δ = 2μL/Δh > 1; at and below 1 there is no neutral plane and 1 is given.
 */
export const tselikov = fromFactor(
  {
    name: 'Tselikov',
    source: 'Tselikov, slipping friction on the chord of the arc',
    status: 'from memory, unconfirmed',
    validity: { [ratioName]: { low: 0.5, high: 10, unit: 'one' } },
  },
  tselikovFactor,
);

export function tselikovFactor(pass: FlatPass): number {
  const draught = draughtOf(pass);
  const delta = (2 * pass.friction * contactLength(pass)) / draught;
  if (delta < 1 + 1e-6) return 1;
  const grown = tselikovNeutral(pass) ** delta;
  return ((2 * pass.h1) / (draught * (delta - 1))) * tselikovNeutral(pass) * (grown - 1);
}

/** h_n/h1, height in the neutral plane over the height after; 1 where δ ≤ 1. */
export function tselikovNeutral(pass: FlatPass): number {
  const delta = (2 * pass.friction * contactLength(pass)) / draughtOf(pass);
  if (delta <= 1) return 1;
  const root = Math.sqrt(1 + (delta * delta - 1) * (pass.h0 / pass.h1) ** delta);
  return ((1 + root) / (delta + 1)) ** (1 / delta);
}
