import { strideOf } from './front.ts';

/** What one front does to one right-hand side; L and D as `eliminate` in front.ts leaves them. */
export interface Substitution {
  readonly lower: Float64Array;
  readonly panel: number;
  readonly order: number;
  readonly pivots: number;
  /** The right-hand side, in the order of elimination, starts at x[base]; the front's pivots at x[base + first]. */
  readonly x: Float64Array;
  readonly base: number;
  readonly first: number;
  /** Places of the rows behind the pivots: border[from] …. */
  readonly border: Int32Array;
  readonly from: number;
}

/**
 * L y = x for the pivots of a front, in place. Every entry becomes ((x_i − l_i0 y_0) − l_i1 y_1) − …, whatever the
 * blocking: kernels that keep to this order agree to the last bit.
 */
export function forward(step: Substitution): void {
  const { pivots, x, base, first } = step;
  const at = base + first;
  let k = 0;
  for (; k + 4 <= pivots; k += 4) {
    for (let j = k; j < k + 4; j++) takeOutOfPivots(step, j, k + 4);
    takeFour(step, k, x[at + k], x[at + k + 1], x[at + k + 2], x[at + k + 3]);
  }
  for (; k < pivots; k++) {
    takeOutOfPivots(step, k, pivots);
    takeOutOfBorder(step, k);
  }
}

/** Column k out of the pivots behind it, up to row `end`. */
function takeOutOfPivots(step: Substitution, k: number, end: number): void {
  const { lower, panel, order, x, base, first } = step;
  const column = panel + k * strideOf(order);
  const at = base + first;
  const xk = x[at + k];
  for (let i = k + 1; i < end; i++) x[at + i] -= lower[column + i] * xk;
}

function takeOutOfBorder(step: Substitution, k: number): void {
  const { lower, panel, order, pivots, x, base, first, border, from } = step;
  const column = panel + k * strideOf(order) + pivots;
  const xk = x[base + first + k];
  const left = order - pivots;
  for (let i = 0; i < left; i++) x[base + border[from + i]] -= lower[column + i] * xk;
}

/** Columns k … k + 3, already solved, out of all rows behind them. */
function takeFour(step: Substitution, k: number, x0: number, x1: number, x2: number, x3: number): void {
  const { lower, panel, order, pivots, x, base, first, border, from } = step;
  const stride = strideOf(order);
  const c0 = panel + k * stride;
  const c1 = c0 + stride;
  const c2 = c1 + stride;
  const c3 = c2 + stride;
  const at = base + first;
  for (let i = k + 4; i < pivots; i++) {
    x[at + i] = x[at + i] - lower[c0 + i] * x0 - lower[c1 + i] * x1 - lower[c2 + i] * x2 - lower[c3 + i] * x3;
  }
  const to = from - pivots;
  for (let i = pivots; i < order; i++) {
    const own = base + border[to + i];
    x[own] = x[own] - lower[c0 + i] * x0 - lower[c1 + i] * x1 - lower[c2 + i] * x2 - lower[c3 + i] * x3;
  }
}

/**
 * D Lᵀ x = y for the pivots of a front whose border is solved already, in place. Every entry becomes
 * y_k / d_k, less the l_ik x_i of the border from its first to its last, less those of the pivots from their last up.
 */
export function backward(step: Substitution): void {
  const { lower, panel, order, pivots, x, base, first } = step;
  const stride = strideOf(order);
  const at = base + first;
  let k = 0;
  for (; k + 4 <= pivots; k += 4) borderOutOfFour(step, k);
  for (; k < pivots; k++) borderOutOfOne(step, k);
  for (k = pivots - 1; k > 0; k--) {
    const xk = x[at + k];
    for (let j = 0; j < k; j++) x[at + j] -= lower[panel + j * stride + k] * xk;
  }
}

function borderOutOfOne(step: Substitution, k: number): void {
  const { lower, panel, order, pivots, x, base, first, border, from } = step;
  const column = panel + k * strideOf(order);
  let s = x[base + first + k] / lower[column + k];
  const to = from - pivots;
  for (let i = pivots; i < order; i++) s -= lower[column + i] * x[base + border[to + i]];
  x[base + first + k] = s;
}

function borderOutOfFour(step: Substitution, k: number): void {
  const { lower, panel, order, pivots, x, base, first, border, from } = step;
  const stride = strideOf(order);
  const c0 = panel + k * stride;
  const c1 = c0 + stride;
  const c2 = c1 + stride;
  const c3 = c2 + stride;
  const at = base + first + k;
  let s0 = x[at] / lower[c0 + k];
  let s1 = x[at + 1] / lower[c1 + k + 1];
  let s2 = x[at + 2] / lower[c2 + k + 2];
  let s3 = x[at + 3] / lower[c3 + k + 3];
  const to = from - pivots;
  for (let i = pivots; i < order; i++) {
    const xi = x[base + border[to + i]];
    s0 -= lower[c0 + i] * xi;
    s1 -= lower[c1 + i] * xi;
    s2 -= lower[c2 + i] * xi;
    s3 -= lower[c3 + i] * xi;
  }
  x[at] = s0;
  x[at + 1] = s1;
  x[at + 2] = s2;
  x[at + 3] = s3;
}
