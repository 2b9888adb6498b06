import { fail, ok, type Result } from '../../outcome/result.ts';
import { draughtOf, meanWidth } from './contact.ts';
import type { FlatPass } from './pass.ts';

/** 16 (1 − ν²)/(πE) for steel rolls, 1/Pa: E 210 GPa, ν 0.3. Dieter's 3.34e-4 in²/long ton is 2.16e-11. */
export const steelRolls = (16 * (1 - 0.3 ** 2)) / (Math.PI * 210e9);

/** Flattened roll radius R' = R (1 + C P/(b Δh)), m, under P newtons on width b. Hitchcock 1935, in Dieter's textbook. */
export const flattenedRadius = (
  R: number,
  force: number,
  width: number,
  draught: number,
  C = steelRolls,
): number => R * (1 + (C * force) / (width * draught));

/**
 * The pass with the radius that its own force flattens the rolls to. For a bloom the radius grows by 0.6 %; for a thin
 * flange late in the line by some 7 %, and the force by 5 %. A Failure where force and radius chase each other.
 */
export function flattened<P extends FlatPass>(pass: P, force: (pass: P) => number): Result<P> {
  let now = pass;
  for (let iterations = 1; iterations <= 60; iterations++) {
    const R = flattenedRadius(pass.R, force(now), meanWidth(pass), draughtOf(pass));
    const change = Math.abs(R / now.R - 1);
    now = { ...now, R };
    if (change < 1e-9) return ok(now);
    if (!(R < 100 * pass.R)) break;
  }
  return fail({
    model: 'roll flattening',
    reason: 'the draught is too small for these rolls: they flatten without end',
  });
}
