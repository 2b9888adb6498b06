import type { Field } from '../outcome/field.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { type Factor, solve } from './ldlt.ts';
import type { SymmetricPattern } from './pattern.ts';

export interface Refined {
  readonly x: Float64Array;
  /** Largest |rhs − A x| relative to |rhs| + |A| |x| of the same row: round-off is about 1e-16. */
  readonly residual: number;
  readonly iterations: number;
}

/**
 * Solves, and takes the residual through the factor again until it is round-off: mends digits that a strongly
 * graded quasi-definite matrix lost, or a factor of slightly older values. One right-hand side.
 * A Failure when the residual stays above `tolerance`.
 * Source: M. Arioli, J. Demmel, I. Duff, SIAM J. Matrix Anal. 10 (1989) 165, componentwise backward error.
 */
export function solveRefined(
  factor: Factor,
  values: Field,
  rhs: Field,
  { tolerance = 1e-12, maxIterations = 10 } = {},
): Result<Refined> {
  const { pattern } = factor.symbolic;
  const x = solve(factor, rhs);
  const left = new Float64Array(rhs.length);
  const scale = new Float64Array(rhs.length);
  let residual = Number.POSITIVE_INFINITY;
  for (let iterations = 0; ; iterations++) {
    residualOf(pattern, values, x, rhs, left, scale);
    const before = residual;
    residual = relative(left, scale);
    if (residual <= tolerance) return ok({ x, residual, iterations });
    if (!(residual < before / 2) || iterations === maxIterations) {
      const reason = `refinement stays at a relative residual of ${residual.toExponential(1)}`;
      return fail({ model: 'ldlt', reason, residual, iterations });
    }
    solve(factor, left, left);
    for (let i = 0; i < x.length; i++) x[i] += left[i];
  }
}

/** rhs − A x into `out`, and |rhs| + |A| |x| into `scale` when it is given. */
export function residualOf(
  { size, columnStart, row }: SymmetricPattern,
  values: Field,
  x: Field,
  rhs: Field,
  out: Float64Array,
  scale?: Float64Array,
): Float64Array {
  for (let i = 0; i < size; i++) out[i] = rhs[i];
  if (scale) for (let i = 0; i < size; i++) scale[i] = Math.abs(rhs[i]);
  for (let j = 0; j < size; j++) {
    for (let at = columnStart[j]; at < columnStart[j + 1]; at++) {
      const i = row[at];
      out[i] -= values[at] * x[j];
      if (i !== j) out[j] -= values[at] * x[i];
      if (!scale) continue;
      scale[i] += Math.abs(values[at] * x[j]);
      if (i !== j) scale[j] += Math.abs(values[at] * x[i]);
    }
  }
  return out;
}

function relative(left: Float64Array, scale: Float64Array): number {
  let most = 0;
  for (let i = 0; i < left.length; i++) {
    if (Number.isNaN(left[i])) return Number.POSITIVE_INFINITY;
    if (left[i] !== 0) most = Math.max(most, Math.abs(left[i]) / scale[i]);
  }
  return most;
}
