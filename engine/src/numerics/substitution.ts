import type { Symbolic } from './symbolic.ts';

/** L y = x for the pivots of front f; x, in the order of elimination, is overwritten. */
export function forward(symbolic: Symbolic, lower: Float64Array, f: number, x: Float64Array): void {
  const { pivotStart, borderStart, border } = symbolic;
  const first = pivotStart[f];
  const pivots = pivotStart[f + 1] - first;
  const left = borderStart[f + 1] - borderStart[f];
  const order = pivots + left;
  for (let k = 0; k < pivots; k++) {
    const xk = x[first + k];
    const column = symbolic.panelStart[f] + k * order;
    for (let i = k + 1; i < pivots; i++) x[first + i] -= lower[column + i] * xk;
    for (let i = 0; i < left; i++) x[border[borderStart[f] + i]] -= lower[column + pivots + i] * xk;
  }
}

/** D Lᵀ x = y for the pivots of front f, whose border is already solved. */
export function backward(symbolic: Symbolic, lower: Float64Array, f: number, x: Float64Array): void {
  const { pivotStart, borderStart, border } = symbolic;
  const first = pivotStart[f];
  const pivots = pivotStart[f + 1] - first;
  const left = borderStart[f + 1] - borderStart[f];
  const order = pivots + left;
  for (let k = pivots - 1; k >= 0; k--) {
    const column = symbolic.panelStart[f] + k * order;
    let xk = x[first + k] / lower[column + k];
    for (let i = k + 1; i < pivots; i++) xk -= lower[column + i] * x[first + i];
    for (let i = 0; i < left; i++) xk -= lower[column + pivots + i] * x[border[borderStart[f] + i]];
    x[first + k] = xk;
  }
}
