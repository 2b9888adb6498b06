import type { Field, Indices } from '../outcome/field.ts';
import { type Failure, ok, type Result } from '../outcome/result.ts';
import { strideOf } from './front.ts';
import type { FrontKernel } from './front-kernel.ts';
import { plainKernel } from './front-plain.ts';
import { simdKernel } from './front-simd/simd-kernel.ts';
import { solveByFronts } from './ldlt-solve.ts';
import type { Symbolic } from './symbolic.ts';

export { analyse, type Symbolic } from './symbolic.ts';

/** A = P L D Lᵀ Pᵀ. Storage of a factor may be used again, see FactorOptions.into. */
export interface Factor {
  readonly symbolic: Symbolic;
  /** How many pivots are negative: by Sylvester's law, how many eigenvalues are. */
  readonly negative: number;
  /** Unknowns whose pivot has not the expected sign, in order of elimination; empty when none was expected. */
  readonly wrongSigns: Indices;
  /** L, front after front, each order × pivots with D on its diagonal; see Symbolic.panelStart. */
  readonly lower: Float64Array;
  /** What the fronts were eliminated with; both kernels give the same bits. */
  readonly kernel: 'simd' | 'plain';
  readonly workspace: FrontKernel;
}

export interface FactorOptions {
  /** The sign expected of each unknown's pivot: +1, −1, or 0 for no matter. */
  readonly signs?: Indices;
  /** An earlier factor of the same Symbolic, no longer needed: its storage is taken over. */
  readonly into?: Factor;
  /** A pivot smaller than this part of the unknown's own diagonal entry counts as zero; default 1e-13. */
  readonly smallestPivot?: number;
  /** For new storage: 'plain' does without WebAssembly. By default the faster kernel that the host can run. */
  readonly kernel?: 'simd' | 'plain';
}

/** A pivot that vanished: the matrix is singular, or so nearly that no digit of a solution would be right. */
export interface SingularPivot extends Failure {
  readonly unknown: number;
  readonly pivot: number;
}

/**
 * Factors a symmetric matrix without pivoting: for positive definite and quasi-definite matrices, and any other
 * whose leading minors do not vanish in the order of elimination.
 *
 * values    one number per entry of the pattern. A sign that is not as expected is reported, not refused.
 * A SingularPivot when a pivot vanishes or is not a number.
 * Source: I. Duff, J. Reid, ACM TOMS 9 (1983) 302 (fronts in a tree); R. Vanderbei, SIAM J. Optim. 5 (1995) 100
 * (quasi-definite matrices may be factored in any order).
 */
export function factor(
  symbolic: Symbolic,
  values: Field,
  { signs, into, kernel, smallestPivot = 1e-13 }: FactorOptions = {},
): Result<Factor, SingularPivot> {
  const { unknown, pivotStart, pattern } = symbolic;
  const workspace = into?.workspace ?? kernelFor(symbolic, kernel);
  const { name, arrays } = workspace;
  const { lower } = arrays;
  takeEntries(symbolic, values, lower);
  const wrongSigns: number[] = [];
  let negative = 0;
  for (let f = 0; f < symbolic.parent.length; f++) {
    eliminateFront(symbolic, f, workspace);
    const stride = strideOf(orderOf(symbolic, f));
    for (let k = pivotStart[f]; k < pivotStart[f + 1]; k++) {
      const pivot = lower[symbolic.panelStart[f] + (k - pivotStart[f]) * (stride + 1)];
      const i = unknown[k];
      const own = Math.abs(values[pattern.columnStart[i]]);
      if (!(Math.abs(pivot) > smallestPivot * own)) return vanished(i, pivot, own);
      if (pivot < 0) negative++;
      if (signs && signs[i] * pivot < 0) wrongSigns.push(i);
    }
  }
  return ok({ symbolic, negative, wrongSigns, lower, kernel: name, workspace });
}

/**
 * The x of A x = rhs, for one right-hand side or several, one after the other in `rhs` and in `out`. L is read once
 * for four of them; with SIMD, two take the time of one. `out` may be `rhs` itself; with it, nothing is allocated.
 */
export function solve(factor: Factor, rhs: Field, out = new Float64Array(rhs.length)): Float64Array {
  solveByFronts(factor.symbolic, factor.workspace, rhs, out);
  return out;
}

/**
 * Memory for WebAssembly costs as much as ten to twenty factorings of a matrix of so many unknowns; above, and kept
 * for the next matrix, it pays.
 */
const smallestForSimd = 100;

function kernelFor(symbolic: Symbolic, asked?: 'simd' | 'plain'): FrontKernel {
  const name = asked ?? (symbolic.unknown.length < smallestForSimd ? 'plain' : 'simd');
  return (name === 'simd' && simdKernel(symbolic)) || plainKernel(symbolic);
}

function orderOf({ pivotStart, borderStart }: Symbolic, f: number): number {
  return pivotStart[f + 1] - pivotStart[f] + borderStart[f + 1] - borderStart[f];
}

function takeEntries({ entryTo }: Symbolic, values: Field, lower: Float64Array): void {
  lower.fill(0);
  for (let at = 0; at < entryTo.length; at++) lower[entryTo[at]] = values[at];
}

/** Front f, whose entries of the matrix are there already: adds what its children left, and eliminates. */
function eliminateFront(symbolic: Symbolic, f: number, kernel: FrontKernel): void {
  const { pivotStart, borderStart, panelStart, updateStart, firstChild, nextChild } = symbolic;
  const left = borderStart[f + 1] - borderStart[f];
  const pivots = pivotStart[f + 1] - pivotStart[f];
  const [panel, update] = [panelStart[f], updateStart[f]];
  kernel.arrays.updates.fill(0, update, update + left * strideOf(left));
  for (let child = firstChild[f]; child >= 0; child = nextChild[child]) {
    const first = borderStart[child];
    const rows = borderStart[child + 1] - first;
    kernel.addUpdate(updateStart[child], rows, first, panel, pivots + left, pivots, update);
  }
  kernel.eliminate(panel, pivots + left, pivots, update);
}

function vanished(unknown: number, pivot: number, own: number): Result<Factor, SingularPivot> {
  const reason = `the matrix is singular: pivot ${pivot} of unknown ${unknown}, whose own entry is ${own}`;
  return { ok: false, failure: { model: 'ldlt', reason, unknown, pivot } };
}
