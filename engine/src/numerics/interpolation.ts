import type { Field } from '../outcome/field.ts';

/** Outside the table: 'clamp' holds the end value, 'extrapolate' goes on straight with the end slope. */
export type Outside = 'clamp' | 'extrapolate';

export type Curve = (x: number) => number;

/**
 * The polygon through (xs, ys); xs strictly ascending, at least one point, else it throws.
 * Rows are copied. NaN in gives NaN out.
 */
export function linear(xs: Field, ys: Field, outside: Outside = 'clamp'): Curve {
  const table = tableOf(xs, ys);
  const slopes = secants(table.xs, table.ys);
  return curve(table, outside, slopes[0] ?? 0, slopes.at(-1) ?? 0, (i, x) => {
    return table.ys[i] + slopes[i] * (x - table.xs[i]);
  });
}

/**
 * The smooth curve (continuous slope) through (xs, ys) that rises where they rise and falls where they fall: no
 * overshoot between points, a flat piece at each local extreme. Same promises as `linear`.
 * Source: F. Fritsch, R. Carlson, SIAM J. Numer. Anal. 17 (1980) 238, from memory.
 */
export function monotoneCubic(xs: Field, ys: Field, outside: Outside = 'clamp'): Curve {
  const table = tableOf(xs, ys);
  const secant = secants(table.xs, table.ys);
  const slope = monotoneSlopes(secant);
  return curve(table, outside, slope[0], slope[slope.length - 1], (i, x) => {
    const h = table.xs[i + 1] - table.xs[i];
    const t = (x - table.xs[i]) / h;
    const bend = slope[i] + slope[i + 1] - 2 * secant[i];
    return table.ys[i] + h * t * (slope[i] + t * (secant[i] - slope[i] - (1 - t) * bend));
  });
}

interface Table {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

function tableOf(xs: Field, ys: Field): Table {
  const table = { xs: Float64Array.from(xs), ys: Float64Array.from(ys) };
  if (xs.length !== ys.length || xs.length === 0) throw new RangeError(`${xs.length} xs for ${ys.length} ys`);
  for (let i = 1; i < xs.length; i++) {
    if (!(xs[i] > xs[i - 1])) throw new RangeError(`xs must ascend: ${xs[i - 1]}, then ${xs[i]}`);
  }
  return table;
}

function secants(xs: Float64Array, ys: Float64Array): Float64Array {
  const slopes = new Float64Array(xs.length - 1);
  for (let i = 0; i < slopes.length; i++) slopes[i] = (ys[i + 1] - ys[i]) / (xs[i + 1] - xs[i]);
  return slopes;
}

function monotoneSlopes(secant: Float64Array): Float64Array {
  const last = secant.length;
  const slope = new Float64Array(last + 1);
  slope[0] = secant[0] ?? 0;
  slope[last] = secant[last - 1] ?? 0;
  for (let i = 1; i < last; i++)
    slope[i] = secant[i - 1] * secant[i] > 0 ? (secant[i - 1] + secant[i]) / 2 : 0;
  for (let i = 0; i < last; i++) {
    // Slopes in units of the secant, (α, β), are pulled back onto the circle of radius 3.
    const reach = Math.hypot(slope[i], slope[i + 1]);
    const allowed = 3 * Math.abs(secant[i]);
    if (reach <= allowed) continue;
    slope[i] *= allowed / reach;
    slope[i + 1] *= allowed / reach;
  }
  return slope;
}

function curve(
  { xs, ys }: Table,
  outside: Outside,
  firstSlope: number,
  lastSlope: number,
  inside: (interval: number, x: number) => number,
): Curve {
  const last = xs.length - 1;
  const goesOn = outside === 'extrapolate' ? 1 : 0;
  return (x) => {
    if (x <= xs[0]) return ys[0] + (goesOn && firstSlope * (x - xs[0]));
    if (x >= xs[last]) return ys[last] + (goesOn && lastSlope * (x - xs[last]));
    return inside(intervalOf(xs, x), x);
  };
}

/** The i with xs[i] ≤ x < xs[i + 1]; the first or the last interval when x lies outside. */
export function intervalOf(xs: Field, x: number): number {
  let [low, high] = [0, xs.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle] <= x) low = middle;
    else high = middle;
  }
  return low;
}
