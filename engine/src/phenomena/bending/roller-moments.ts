import { solveDense } from '../../numerics/dense.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { curvatureNow, type Passage, run } from './passage.ts';
import { kinkMissing, kinkSlope, spreadMoments } from './rollers.ts';

/** Moments at the touching inner rollers with which the bar passes all touching rollers. */
export interface RollerMoments {
  /** N·m, one per touching inner roller. */
  readonly inner: Float64Array;
  /** rad: largest kink missing. */
  readonly residual: number;
  readonly iterations: number;
  /** d kink / d moment as last known, row by row. */
  readonly slopes: Float64Array;
}

export interface MomentSearch {
  /** rad */
  readonly tolerance: number;
  /** N·m: no moment changes by more than this in one iteration. */
  readonly longestStep: number;
  readonly maxIterations: number;
}

/**
 * Newton in the moments; the slopes are renewed by Broyden and computed again after a step that did not halve the
 * residual. A step into moments that no section can carry is halved.
 */
export function rollerMoments(
  bar: Passage,
  touching: readonly number[],
  start: Float64Array,
  slopes: Float64Array | undefined,
  search: MomentSearch,
): Result<RollerMoments> {
  let inner = start;
  let missing = kinks(bar, touching, inner);
  let [known, fresh] = [slopes, false];
  let iteration = 0;
  for (; missing && iteration < search.maxIterations; iteration++) {
    const residual = largest(missing);
    if (residual < search.tolerance && known)
      return ok({ inner, residual, iterations: iteration, slopes: known });
    if (!known) {
      known = kinkSlopes(bar, touching, inner, missing, search.longestStep * 1e-4).slopes;
      fresh = true;
    }
    const next = carriedStep(bar, touching, inner, missing, known, search.longestStep);
    if (!next) break;
    const slow = largest(next.missing) > 0.5 * residual;
    known = slow && !fresh ? undefined : broydenUpdated(known, next.step, next.missing, missing);
    [inner, missing, fresh] = [next.inner, next.missing, false];
  }
  return fail({
    model: 'straightener',
    reason: missing
      ? 'The moments at the rollers did not settle.'
      : 'A section cannot carry the moments asked of it.',
    residual: missing ? largest(missing) : 1,
    iterations: iteration,
  });
}

/** The Newton step, shortened to the longest allowed and halved until every section on the way carries its moment. */
function carriedStep(
  bar: Passage,
  touching: readonly number[],
  inner: Float64Array,
  missing: Float64Array,
  slopes: Float64Array,
  longest: number,
) {
  const wanted = solveDense(slopes, missing);
  if (!wanted.ok) return undefined;
  let share = -Math.min(1, longest / largest(wanted.value));
  for (let halving = 0; halving < 8; halving++, share /= 2) {
    const step = Float64Array.from(wanted.value, (each) => each * share);
    const moved = Float64Array.from(inner, (each, i) => each + step[i]);
    const after = kinks(bar, touching, moved);
    if (after) return { inner: moved, missing: after, step };
  }
  return undefined;
}

/** Runs the bar with these moments and returns the kink missing at each touching inner roller; undefined if it failed. */
function kinks(bar: Passage, touching: readonly number[], inner: Float64Array): Float64Array | undefined {
  const moment = spreadMoments(bar.line, touching, inner);
  return run(bar, moment, 0, bar.curvature, true) ? kinksOf(bar.curvature, bar, touching) : undefined;
}

const kinksOf = (curvature: Float64Array, { line }: Passage, touching: readonly number[]): Float64Array =>
  Float64Array.from(touching.slice(1, -1), (roller, k) =>
    kinkMissing(curvature, line, touching[k], roller, touching[k + 2]),
  );

/** d kink / d moment by differences, and d (curvature that leaves) / d moment. Starts each trial at the roller before. */
export function kinkSlopes(
  bar: Passage,
  touching: readonly number[],
  inner: Float64Array,
  missing: Float64Array,
  step: number,
): { readonly slopes: Float64Array; readonly exit: Float64Array } {
  const n = inner.length;
  const slopes = new Float64Array(n * n);
  const exit = new Float64Array(n);
  const last = bar.curvature.length - 1;
  for (let c = 0; c < n; c++) {
    const moved = Float64Array.from(inner);
    moved[c] += step;
    const trial = Float64Array.from(bar.curvature);
    run(bar, spreadMoments(bar.line, touching, moved), touching[c], trial, false);
    const after = kinksOf(trial, bar, touching);
    for (let r = 0; r < n; r++) slopes[r * n + c] = (after[r] - missing[r]) / step;
    exit[c] = (trial[last] - bar.curvature[last]) / step;
  }
  return { slopes, exit };
}

/** Change of the curvature that leaves for each roller moved 1 m further, 1/m per m; 0 for a roller that does not touch. */
export function exitSensitivity(
  bar: Passage,
  touching: readonly number[],
  inner: Float64Array,
  step: number,
): Float64Array {
  const missing = kinks(bar, touching, inner);
  const sensitivity = new Float64Array(bar.line.position.length);
  if (!missing) return sensitivity;
  const { slopes, exit } = kinkSlopes(bar, touching, inner, missing, step);
  for (const moved of touching) {
    const asked = Float64Array.from(touching.slice(1, -1), (roller, k) =>
      kinkSlope(bar.line, touching[k], roller, touching[k + 2], moved),
    );
    const change = solveDense(slopes, asked);
    if (change.ok) sensitivity[moved] = change.value.reduce((sum, each, i) => sum + each * exit[i], 0);
  }
  return sensitivity;
}

/** Curvature of the bar as it leaves the run. */
export const leavingCurvature = (bar: Passage): number => curvatureNow(bar.section, bar.line);

const largest = (row: Float64Array): number => row.reduce((most, each) => Math.max(most, Math.abs(each)), 0);

/** Broyden's good update: slopes that agree with the last step, J + (Δr − J·Δz)·Δzᵀ / Δz². */
function broydenUpdated(
  slopes: Float64Array,
  step: Float64Array,
  after: Float64Array,
  before: Float64Array,
): Float64Array {
  const n = step.length;
  const size = step.reduce((sum, each) => sum + each * each, 0);
  const next = Float64Array.from(slopes);
  for (let r = 0; r < n && size > 0; r++) {
    let defect = after[r] - before[r];
    for (let c = 0; c < n; c++) defect -= slopes[r * n + c] * step[c];
    for (let c = 0; c < n; c++) next[r * n + c] += (defect * step[c]) / size;
  }
  return next;
}
