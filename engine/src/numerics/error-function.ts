/**
 * 1 − erf(x) to 12 digits of its value for any x: series of positive terms near zero, continued fraction beyond 2.
 * erfc(−x) = 2 − erfc(x). Classical formulas (Abramowitz and Stegun 7.1.6 and 7.1.14).
 */
export function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x);
  return x < 2 ? 1 - seriesErf(x) : Math.exp(-x * x) * tail(x);
}

/** exp(x²)·erfc(x) for x ≥ 0: stays finite where the two factors overflow and vanish. */
export const scaledErfc = (x: number): number => (x < 2 ? Math.exp(x * x) * erfc(x) : tail(x));

export const erf = (x: number): number =>
  Math.abs(x) < 2 ? Math.sign(x) * seriesErf(Math.abs(x)) : 1 - erfc(x);

const rootPi = Math.sqrt(Math.PI);

function seriesErf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; term > 1e-17 * sum; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / rootPi) * Math.exp(-x * x) * sum;
}

/** exp(x²)·erfc(x), the fraction x + ½/(x + 1/(x + 3/2/(x + …))) from its far end; 60 levels are enough from x = 2. */
function tail(x: number): number {
  let below = x;
  for (let level = 60; level > 0; level--) below = x + level / 2 / below;
  return 1 / (rootPi * below);
}
