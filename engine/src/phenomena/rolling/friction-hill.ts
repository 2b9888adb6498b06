import { contactRatio } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';

/**
 * Slab between flat platens of the mean height with slipping friction: (e^Q − 1)/Q, Q = μL/h_m, mean pressure over 2k.
 * Dieter, Mechanical Metallurgy, example 17.2. (Its printed sticking variant divides by the draught instead of the mean
 * height: not the slab solution, not used; the right one is `stickingHill`.)
 */
export const frictionHill = fromFactor(
  {
    name: 'Friction hill',
    source: "Dieter's textbook, example 17.2",
    status: 'read in a published text',
    validity: { [ratioName]: { low: 0.5, high: 10, unit: 'one' } },
  },
  (pass) => slippingHill(pass.friction * contactRatio(pass)),
);

/** (e^Q − 1)/Q, 1 at Q = 0: exact for the slab model. */
export const slippingHill = (Q: number): number => (Math.abs(Q) < 1e-12 ? 1 : Math.expm1(Q) / Q);

/** 1 + w/(4h): the slab stuck to rough platens, width w over height h. */
export const stickingHill = (widthOverHeight: number): number => 1 + widthOverHeight / 4;
