/** Points and weights on −1 … 1; weights add up to 2. */
export interface Rule {
  readonly points: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Gauss-Legendre rule with `count` points, ascending: exact for polynomials up to degree 2·count − 1.
 * Roots of the Legendre polynomial by Newton from Tricomi's estimate; good to round-off for 1 … 100 points.
 */
export function gaussLegendre(count: number): Rule {
  const points = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 6; step++) {
      const [value, before] = legendre(count, x);
      slope = (count * (before - x * value)) / (1 - x * x);
      x -= value / slope;
    }
    points[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { points, weights };
}

/** Pₙ(x) and Pₙ₋₁(x). */
function legendre(n: number, x: number): [number, number] {
  let [value, before] = [x, 1];
  for (let k = 2; k <= n; k++) [value, before] = [((2 * k - 1) * x * value - (k - 1) * before) / k, value];
  return [value, before];
}

/** ∫ f from low to high with a rule on −1 … 1. */
export function integrate(f: (x: number) => number, low: number, high: number, rule: Rule): number {
  const half = (high - low) / 2;
  let sum = 0;
  for (let i = 0; i < rule.points.length; i++) sum += rule.weights[i] * f(low + half * (1 + rule.points[i]));
  return half * sum;
}

/** ∫ f from low to high by Simpson's rule on `pieces` equal pieces, each with its midpoint; exact for cubics. */
export function simpson(f: (x: number) => number, low: number, high: number, pieces: number): number {
  const h = (high - low) / pieces;
  let sum = f(low) + 4 * f(low + h / 2) + f(high);
  for (let i = 1; i < pieces; i++) sum += 2 * f(low + i * h) + 4 * f(low + (i + 0.5) * h);
  return (sum * h) / 6;
}
