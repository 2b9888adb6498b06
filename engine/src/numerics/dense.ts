import type { Field } from '../outcome/field.ts';
import { fail, ok, type Result } from '../outcome/result.ts';

/** A pivot smaller than this part of its column's (row's) largest entry counts as zero. */
const smallestPivot = 1e-14;

/**
 * The x of A x = rhs for a small full matrix (3 × 3 … about 60 × 60), row after row; the inputs stay untouched.
 * A Failure when A is singular to round-off.
 */
export function solveDense(matrix: Field, rhs: Field): Result<Float64Array> {
  return solveDenseInPlace(Float64Array.from(matrix), Float64Array.from(rhs));
}

/** The same for inner loops: `matrix` is destroyed, `rhs` becomes the answer and is returned. */
export function solveDenseInPlace(matrix: Float64Array, rhs: Float64Array): Result<Float64Array> {
  const n = rhs.length;
  const floor = smallestPivot * largest(matrix);
  for (let k = 0; k < n; k++) {
    const pivotRow = rowOfLargest(matrix, n, k);
    const pivot = matrix[pivotRow * n + k];
    if (!(Math.abs(pivot) > floor)) return singular(k, pivot);
    if (pivotRow !== k) swapRows(matrix, rhs, n, k, pivotRow);
    for (let i = k + 1; i < n; i++) {
      const multiple = matrix[i * n + k] / pivot;
      if (multiple === 0) continue;
      for (let j = k + 1; j < n; j++) matrix[i * n + j] -= multiple * matrix[k * n + j];
      rhs[i] -= multiple * rhs[k];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let left = rhs[i];
    for (let j = i + 1; j < n; j++) left -= matrix[i * n + j] * rhs[j];
    rhs[i] = left / matrix[i * n + i];
  }
  return ok(rhs);
}

/**
 * The x of A x = rhs for a small symmetric positive definite matrix, of which only the lower triangle is read.
 * A Failure when A is not positive definite: it names the first leading block that is not.
 */
export function solvePositiveDefinite(matrix: Field, rhs: Field): Result<Float64Array> {
  const n = rhs.length;
  const lower = Float64Array.from(matrix);
  const x = Float64Array.from(rhs);
  for (let j = 0; j < n; j++) {
    const before = lower[j * n + j];
    for (let i = j; i < n; i++) {
      for (let k = 0; k < j; k++) lower[i * n + j] -= lower[i * n + k] * lower[j * n + k];
      if (i > j) lower[i * n + j] /= lower[j * n + j];
      else if (!(lower[j * n + j] > smallestPivot * before)) return singular(j, lower[j * n + j]);
      else lower[j * n + j] = Math.sqrt(lower[j * n + j]);
    }
  }
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] -= lower[i * n + k] * x[k];
    x[i] /= lower[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] -= lower[k * n + i] * x[k];
    x[i] /= lower[i * n + i];
  }
  return ok(x);
}

function largest(matrix: Float64Array): number {
  let most = 0;
  for (let at = 0; at < matrix.length; at++) most = Math.max(most, Math.abs(matrix[at]));
  return most;
}

function rowOfLargest(matrix: Float64Array, n: number, column: number): number {
  let row = column;
  for (let i = column + 1; i < n; i++) {
    if (Math.abs(matrix[i * n + column]) > Math.abs(matrix[row * n + column])) row = i;
  }
  return row;
}

function swapRows(matrix: Float64Array, rhs: Float64Array, n: number, a: number, b: number): void {
  for (let j = 0; j < n; j++) {
    const kept = matrix[a * n + j];
    matrix[a * n + j] = matrix[b * n + j];
    matrix[b * n + j] = kept;
  }
  const kept = rhs[a];
  rhs[a] = rhs[b];
  rhs[b] = kept;
}

const singular = (k: number, pivot: number): Result<Float64Array> =>
  fail({ model: 'dense solve', reason: `pivot ${k} of the matrix is ${pivot}` });
