import type { Field } from '../outcome/field.ts';
import { type FrontKernel, togetherAtMost } from './front-kernel.ts';
import type { Symbolic } from './symbolic.ts';

/** The triangular solves, with the L and D that the kernel keeps; see solve in ldlt.ts. */
export function solveByFronts(symbolic: Symbolic, kernel: FrontKernel, rhs: Field, out: Float64Array): void {
  const n = symbolic.unknown.length;
  for (let from = 0; from < rhs.length; from += togetherAtMost * n) {
    const rights = Math.min(togetherAtMost, (rhs.length - from) / n);
    for (let right = 0; right < rights; right++) takeRight(symbolic, rhs, from + right * n, kernel, right);
    if (rights % kernel.lanes > 0) clearLane(kernel, n, rights);
    substitute(symbolic, kernel, Math.ceil(rights / kernel.lanes));
    for (let right = 0; right < rights; right++) giveRight(symbolic, out, from + right * n, kernel, right);
  }
}

/** Down the tree and up again, all groups of right-hand sides at each front, so that L is read once. */
function substitute(symbolic: Symbolic, kernel: FrontKernel, groups: number): void {
  const fronts = symbolic.parent.length;
  for (let f = 0; f < fronts; f++) {
    for (let group = 0; group < groups; group++) atFront(symbolic, f, kernel.forward, group);
  }
  for (let f = fronts - 1; f >= 0; f--) {
    for (let group = 0; group < groups; group++) atFront(symbolic, f, kernel.backward, group);
  }
}

function atFront(symbolic: Symbolic, f: number, step: FrontKernel['forward'], group: number): void {
  const { pivotStart, borderStart, panelStart } = symbolic;
  const pivots = pivotStart[f + 1] - pivotStart[f];
  step(
    panelStart[f],
    pivots + borderStart[f + 1] - borderStart[f],
    pivots,
    pivotStart[f],
    borderStart[f],
    group,
  );
}

/** Where place 0 of a right-hand side is; the next places follow in steps of the number of lanes. */
function startOf({ lanes }: FrontKernel, n: number, right: number): number {
  return Math.floor(right / lanes) * n * lanes + (right % lanes);
}

function takeRight(
  { unknown }: Symbolic,
  rhs: Field,
  from: number,
  kernel: FrontKernel,
  right: number,
): void {
  const { rights, lanes } = kernel;
  let at = startOf(kernel, unknown.length, right);
  for (let k = 0; k < unknown.length; k++, at += lanes) rights[at] = rhs[from + unknown[k]];
}

function giveRight(
  { unknown }: Symbolic,
  out: Float64Array,
  from: number,
  kernel: FrontKernel,
  right: number,
) {
  const { rights, lanes } = kernel;
  let at = startOf(kernel, unknown.length, right);
  for (let k = 0; k < unknown.length; k++, at += lanes) out[from + unknown[k]] = rights[at];
}

/** A lane without a right-hand side must not keep numbers that shrink from solve to solve: tiny ones are slow. */
function clearLane(kernel: FrontKernel, n: number, right: number): void {
  const { rights, lanes } = kernel;
  const start = startOf(kernel, n, right);
  for (let k = 0; k < n; k++) rights[start + k * lanes] = 0;
}
