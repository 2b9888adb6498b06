import { biteAngle } from './contact.ts';
import type { Draught } from './pass.ts';

/** Largest angle, rad, at which rolls take in a bar that is not pushed: tan α = μ. */
export const freeBiteAngle = (friction: number): number => Math.atan(friction);

/** Largest draught, m, by Dieter's μ²R: the small-angle form, above the exact one by ¾μ² of it (7 % at 0.3). */
export const biteDraught = (friction: number, R: number): number => friction * friction * R;

/** Exact for round rolls, m: 2R (1 − cos atan μ). */
export const biteDraughtExact = (friction: number, R: number): number =>
  2 * R * (1 - 1 / Math.sqrt(1 + friction * friction));

export const bitesFreely = (draught: Draught, friction: number): boolean =>
  biteAngle(draught) <= freeBiteAngle(friction);

/** Once filled, a pass holds on to about 1.5 (to 2) times the free angle; from memory, unconfirmed. */
export const steadyBiteAngle = (friction: number): number => 1.5 * freeBiteAngle(friction);

/** Usual largest hot bite angles by roll, rad; from memory, unconfirmed. The low end is the careful one. */
export const biteLimits = {
  'smooth, finishing': degrees(15, 18),
  'plain breakdown': degrees(20, 24),
  'ragged blooming': degrees(27, 34),
} as const;

function degrees(low: number, high: number): { readonly low: number; readonly high: number } {
  return { low: (low * Math.PI) / 180, high: (high * Math.PI) / 180 };
}
