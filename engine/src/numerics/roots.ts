import { fail, ok, type Result } from '../outcome/result.ts';

export interface Root {
  readonly root: number;
  /** f(root), signed. */
  readonly residual: number;
  readonly iterations: number;
}

export interface RootOptions {
  /** Half-width of the last bracket, in units of x. Default: four units in the last place of the wider end. */
  readonly tolerance?: number;
  readonly maxIterations?: number;
}

/**
 * A zero of f between low and high, where f must change sign; ends with f = 0 count.
 *
 * Inverse quadratic steps where they are safe, halving elsewhere: never slower than a few times bisection.
 * A Failure when the signs do not differ, f is not a number, or the bracket is still too wide in the end.
 * Source: T. Chandrupatla, Adv. Eng. Software 28 (1997) 145, from memory.
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  { tolerance = 0, maxIterations = 100 }: RootOptions = {},
): Result<Root> {
  // b is the newest point, [a, b] brackets, c is the point that left the bracket.
  let [a, b, c] = [low, high, low];
  let [fa, fb] = [f(low), f(high)];
  let fc = fa;
  if (fa === 0) return ok({ root: a, residual: 0, iterations: 0 });
  if (fb === 0) return ok({ root: b, residual: 0, iterations: 0 });
  if (Math.sign(fa) !== -Math.sign(fb)) return notBracketed(low, high, fa, fb);
  let fraction = 0.5;
  for (let iterations = 1; iterations <= maxIterations; iterations++) {
    const x = a + fraction * (b - a);
    const fx = f(x);
    if (Number.isNaN(fx)) return fail({ model: 'root', reason: `f(${x}) is not a number`, iterations });
    [c, fc] = fx > 0 === fa > 0 ? [a, fa] : [b, fb];
    if (fx > 0 !== fa > 0) [b, fb] = [a, fa];
    [a, fa] = [x, fx];
    const [root, residual] = Math.abs(fa) < Math.abs(fb) ? [a, fa] : [b, fb];
    const closest = (2 * Number.EPSILON * Math.abs(root) + tolerance / 2) / Math.abs(b - a);
    if (closest > 0.5 || fx === 0) return ok({ root, residual, iterations });
    fraction = Math.min(1 - closest, Math.max(closest, nextFraction(a, b, c, fa, fb, fc)));
  }
  const reason = `the root is known only to lie between ${Math.min(a, b)} and ${Math.max(a, b)}`;
  return fail({
    model: 'root',
    reason,
    residual: Math.min(Math.abs(fa), Math.abs(fb)),
    iterations: maxIterations,
  });
}

/** Where to look next, as a fraction of the way from a to b. */
function nextFraction(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const isMonotone = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
  if (!isMonotone) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

function notBracketed(low: number, high: number, fa: number, fb: number): Result<Root> {
  const reason = `no change of sign between f(${low}) = ${fa} and f(${high}) = ${fb}`;
  return fail({ model: 'root', reason, residual: Math.min(Math.abs(fa), Math.abs(fb)), iterations: 0 });
}
