import { contactLength, reduction } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';
import type { FlatPass } from './pass.ts';

/**
 * Sims 1954: mean pressure over 2k with sticking friction all along the arc (Orowan's condition in von Karman's
 * equilibrium). Formula from memory, its derivation confirmed by title and abstract; friction does not enter.
 * Falls below 1 for thick stock (L/h_m < 1), where it no longer holds: see slip-line.ts.
 */
export const sims = fromFactor(
  {
    name: 'Sims',
    source: 'Sims 1954',
    status: 'from memory, unconfirmed',
    validity: { [ratioName]: { low: 1, high: 15, unit: 'one' } },
  },
  simsFactor,
);

export function simsFactor(pass: FlatPass): number {
  const r = reduction(pass);
  const { R, h1 } = pass;
  const shape = Math.sqrt((1 - r) / r);
  const slender = shape * Math.sqrt(R / h1);
  const stuck = (Math.PI / 2) * shape * Math.atan(1 / shape) - Math.PI / 4;
  return stuck - slender * Math.log(neutralHeight(pass) / h1) - (slender / 2) * Math.log(1 - r);
}

/** φ_n, rad: the angle from the exit plane at which bar and roll run together. */
export function neutralAngle(pass: FlatPass): number {
  const { R, h1 } = pass;
  const r = reduction(pass);
  const slim = Math.sqrt(h1 / R);
  return slim * Math.tan((Math.PI / 8) * slim * Math.log(1 - r) + Math.atan(Math.sqrt(r / (1 - r))) / 2);
}

/** h_n, m: the bar's height in the neutral plane; over h1 less 1 it is the forward slip, less the rise of the arc. */
export const neutralHeight = (pass: FlatPass): number => pass.h1 + pass.R * neutralAngle(pass) ** 2;

/** a/L: lever arm of the force over the contact length, from Sims's torque 2k b R R'(α/2 − φ_n) with R' = R. */
export function simsLeverArm(pass: FlatPass): number {
  const { R } = pass;
  const L = contactLength(pass);
  return ((R * R) / (L * L)) * ((L / R / 2 - neutralAngle(pass)) / simsFactor(pass));
}
