import { strideOf } from './front.ts';
import type { Symbolic } from './symbolic.ts';

/** L y = x for the pivots of front f; x, in the order of elimination, is overwritten. */
export function forward(symbolic: Symbolic, lower: Float64Array, f: number, x: Float64Array): void {
  const { pivotStart, borderStart, border } = symbolic;
  const first = pivotStart[f];
  const pivots = pivotStart[f + 1] - first;
  const from = borderStart[f];
  const left = borderStart[f + 1] - from;
  const order = strideOf(pivots + left);
  const panel = symbolic.panelStart[f];
  for (let k = 0; k < pivots; k++) {
    const xk = x[first + k];
    for (let i = k + 1; i < pivots; i++) x[first + i] -= lower[panel + k * order + i] * xk;
  }
  let k = 0;
  for (; k + 4 <= pivots; k += 4) {
    const [x0, x1, x2, x3] = [x[first + k], x[first + k + 1], x[first + k + 2], x[first + k + 3]];
    const c = panel + k * order + pivots;
    for (let i = 0; i < left; i++) {
      const own = lower[c + i] * x0 + lower[c + order + i] * x1;
      x[border[from + i]] -= own + lower[c + 2 * order + i] * x2 + lower[c + 3 * order + i] * x3;
    }
  }
  for (; k < pivots; k++) {
    const c = panel + k * order + pivots;
    for (let i = 0; i < left; i++) x[border[from + i]] -= lower[c + i] * x[first + k];
  }
}

/** D Lᵀ x = y for the pivots of front f, whose border is already solved. */
export function backward(symbolic: Symbolic, lower: Float64Array, f: number, x: Float64Array): void {
  const { pivotStart, borderStart, border } = symbolic;
  const first = pivotStart[f];
  const pivots = pivotStart[f + 1] - first;
  const from = borderStart[f];
  const left = borderStart[f + 1] - from;
  const order = strideOf(pivots + left);
  const panel = symbolic.panelStart[f];
  for (let k = 0; k < pivots; k++) x[first + k] /= lower[panel + k * order + k];
  let k = 0;
  for (; k + 4 <= pivots; k += 4) {
    let [s0, s1, s2, s3] = [0, 0, 0, 0];
    const c = panel + k * order + pivots;
    for (let i = 0; i < left; i++) {
      const xi = x[border[from + i]];
      s0 += lower[c + i] * xi;
      s1 += lower[c + order + i] * xi;
      s2 += lower[c + 2 * order + i] * xi;
      s3 += lower[c + 3 * order + i] * xi;
    }
    x[first + k] -= s0;
    x[first + k + 1] -= s1;
    x[first + k + 2] -= s2;
    x[first + k + 3] -= s3;
  }
  for (; k < pivots; k++) {
    const c = panel + k * order + pivots;
    for (let i = 0; i < left; i++) x[first + k] -= lower[c + i] * x[border[from + i]];
  }
  for (k = pivots - 1; k >= 0; k--) {
    let xk = x[first + k];
    for (let i = k + 1; i < pivots; i++) xk -= lower[panel + k * order + i] * x[first + i];
    x[first + k] = xk;
  }
}
