import type { Field, Indices } from '../outcome/field.ts';
import { type Failure, ok, type Result } from '../outcome/result.ts';
import { eliminate } from './front.ts';
import { backward, forward } from './substitution.ts';
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
  readonly workspace: Workspace;
}

interface Workspace {
  /** Fronts that are being eliminated or wait for their parent; see Symbolic.frontStart. */
  readonly fronts: Float64Array;
  /** One right-hand side in the order of elimination. */
  readonly ordered: Float64Array;
}

export interface FactorOptions {
  /** The sign expected of each unknown's pivot: +1, −1, or 0 for no matter. */
  readonly signs?: Indices;
  /** An earlier factor of the same Symbolic, no longer needed: its storage is taken over. */
  readonly into?: Factor;
  /** A pivot smaller than this part of the unknown's own diagonal entry counts as zero; default 1e-13. */
  readonly smallestPivot?: number;
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
  { signs, into, smallestPivot = 1e-13 }: FactorOptions = {},
): Result<Factor, SingularPivot> {
  const { unknown, pivotStart, pattern } = symbolic;
  const { lower, workspace } = into ?? storageFor(symbolic);
  const wrongSigns: number[] = [];
  let negative = 0;
  for (let f = 0; f < symbolic.parent.length; f++) {
    const { fronts } = workspace;
    const at = symbolic.frontStart[f];
    const order = orderOf(symbolic, f);
    const pivots = pivotStart[f + 1] - pivotStart[f];
    assemble(symbolic, f, values, fronts);
    eliminate(fronts, at, order, pivots);
    for (let k = 0; k < pivots; k++) {
      const pivot = fronts[at + k * order + k];
      const i = unknown[pivotStart[f] + k];
      const own = Math.abs(values[pattern.columnStart[i]]);
      if (!(Math.abs(pivot) > smallestPivot * own)) return vanished(i, pivot, own);
      if (pivot < 0) negative++;
      if (signs && signs[i] * pivot < 0) wrongSigns.push(i);
    }
    keepPanel(fronts, at, order * pivots, lower, symbolic.panelStart[f]);
  }
  return ok({ symbolic, negative, wrongSigns, lower, workspace });
}

/**
 * The x of A x = rhs, for one right-hand side or several, one after the other in `rhs` and in `out`.
 * `out` may be `rhs` itself; with it, nothing is allocated.
 */
export function solve(factor: Factor, rhs: Field, out = new Float64Array(rhs.length)): Float64Array {
  const { symbolic, lower } = factor;
  const { unknown } = symbolic;
  const { ordered } = factor.workspace;
  const n = unknown.length;
  for (let from = 0; from < rhs.length; from += n) {
    for (let k = 0; k < n; k++) ordered[k] = rhs[from + unknown[k]];
    for (let f = 0; f < symbolic.parent.length; f++) forward(symbolic, lower, f, ordered);
    for (let f = symbolic.parent.length - 1; f >= 0; f--) backward(symbolic, lower, f, ordered);
    for (let k = 0; k < n; k++) out[from + unknown[k]] = ordered[k];
  }
  return out;
}

function storageFor(symbolic: Symbolic): Pick<Factor, 'lower' | 'workspace'> {
  const fronts = new Float64Array(symbolic.workspaceSize);
  const ordered = new Float64Array(symbolic.unknown.length);
  const lower = new Float64Array(symbolic.panelStart[symbolic.parent.length]);
  return { lower, workspace: { fronts, ordered } };
}

function orderOf({ pivotStart, borderStart }: Symbolic, f: number): number {
  return pivotStart[f + 1] - pivotStart[f] + borderStart[f + 1] - borderStart[f];
}

/** Front f: its entries of the matrix, and the updates its children left. */
function assemble(symbolic: Symbolic, f: number, values: Field, fronts: Float64Array): void {
  const { frontStart, entryStart, entry, entryTo, firstChild, nextChild } = symbolic;
  const at = frontStart[f];
  const order = orderOf(symbolic, f);
  fronts.fill(0, at, at + order * order);
  for (let n = entryStart[f]; n < entryStart[f + 1]; n++) fronts[at + entryTo[n]] += values[entry[n]];
  for (let child = firstChild[f]; child >= 0; child = nextChild[child]) {
    addUpdate(symbolic, child, fronts, at, order);
  }
}

function addUpdate(symbolic: Symbolic, child: number, fronts: Float64Array, at: number, order: number): void {
  const { borderStart, rowInParent } = symbolic;
  const first = borderStart[child];
  const left = borderStart[child + 1] - first;
  const childOrder = orderOf(symbolic, child);
  const update = symbolic.frontStart[child] + (childOrder - left) * (childOrder + 1);
  for (let j = 0; j < left; j++) {
    const to = at + rowInParent[first + j] * order;
    const from = update + j * childOrder;
    for (let i = j; i < left; i++) fronts[to + rowInParent[first + i]] += fronts[from + i];
  }
}

function keepPanel(fronts: Float64Array, at: number, length: number, lower: Float64Array, to: number): void {
  for (let i = 0; i < length; i++) lower[to + i] = fronts[at + i];
}

function vanished(unknown: number, pivot: number, own: number): Result<Factor, SingularPivot> {
  const reason = `the matrix is singular: pivot ${pivot} of unknown ${unknown}, whose own entry is ${own}`;
  return { ok: false, failure: { model: 'ldlt', reason, unknown, pivot } };
}
