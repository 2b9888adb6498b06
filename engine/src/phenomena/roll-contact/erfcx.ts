/**
 * exp(x²) erfc(x) for x ≥ 0, without overflow: the continued fraction of erfc from 2 on, its Maclaurin series below.
 * Relative error below 1e-12; x < 0 throws.
 */
export function erfcx(x: number): number {
  if (!(x >= 0)) throw new RangeError(`erfcx of ${x}: contact times and films are never negative`);
  return x < 2 ? Math.exp(x * x) - errorSeries(x) : continuedFraction(x);
}

/** exp(x²) erf(x) = (2/√π) Σ 2ⁿ x^(2n+1) / (1·3·5…(2n+1)): all terms positive. */
function errorSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; term > 1e-17 * sum; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

/** 1/√π / (x + ½/(x + 1/(x + 3/2/(x + …)))), from far inside out. */
function continuedFraction(x: number): number {
  let tail = x;
  for (let n = 120; n > 0; n--) tail = x + n / 2 / tail;
  return 1 / (Math.sqrt(Math.PI) * tail);
}
