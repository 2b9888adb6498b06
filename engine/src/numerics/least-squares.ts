import type { Field } from '../outcome/field.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { type Box, intoBox } from './box.ts';
import { solvePositiveDefinite } from './dense.ts';
import { differenceJacobian } from './jacobian.ts';

export interface Fit {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  readonly sumOfSquares: number;
  /**
   * JᵀJ at the parameters, n × n. Where the model is nearly linear the covariance of the parameters is
   * sumOfSquares / (m − n) times its inverse; rows of parameters held by a bound do not belong in it.
   */
  readonly normal: Float64Array;
  /** Per parameter: −1 held by its low bound, +1 by its high bound, 0 free. */
  readonly held: Int8Array;
  readonly iterations: number;
  /** Largest cosine between the residuals and a free column of J: 0 at a stationary point. */
  readonly residual: number;
}

export interface FitOptions extends Box {
  /** m × n, row after row: ∂residual[i] / ∂parameter[j]. Default: forward differences. */
  readonly jacobian?: (parameters: Field) => Field;
  /** Typical size of each parameter, for difference steps and tolerances; default |start|, or 1 where that is 0. */
  readonly scale?: Field;
  /** On the cosine, and on the step in units of `scale`. */
  readonly tolerance?: number;
  readonly maxIterations?: number;
}

/**
 * Parameters in a box for which the sum of squared residuals has a local minimum.
 *
 * residuals    m numbers for n parameters, m ≥ n expected; a trial that is not finite is stepped back from.
 * A Failure when the start is not finite or the minimum is not reached within `maxIterations`.
 * Source: K. Levenberg 1944, D. Marquardt 1963; damping after H. Nielsen 1999; from memory. Bounds by holding
 * the parameters that press against them and clipping the step of the others.
 */
export function leastSquares(
  residuals: (parameters: Field) => Field,
  start: Field,
  options: FitOptions = {},
): Result<Fit> {
  const { tolerance = 1e-8, maxIterations = 200 } = options;
  const scale = options.scale ?? Array.from(start, (x) => Math.abs(x) || 1);
  const jacobian = options.jacobian ?? differenceJacobian(residuals, scale, options);
  let p = intoBox(Float64Array.from(start), options);
  let r = Float64Array.from(residuals(p));
  let sum = squared(r);
  if (!Number.isFinite(sum))
    return fail({ model: 'fit', reason: 'the residuals at the start are not finite' });
  let [damping, growth] = [1e-3, 2];
  let model = linearised(jacobian(p, r), r, p, options);
  for (let iterations = 0; iterations <= maxIterations; iterations++) {
    const { normal, held, gradient } = model;
    const residual = model.cosine;
    const done = (): Result<Fit> =>
      ok({ parameters: p, residuals: r, sumOfSquares: sum, normal, held, iterations, residual });
    if (sum === 0 || residual <= tolerance) return done();
    const step = dampedStep(model, damping);
    const length = largestPart(step, p, scale);
    if (length <= tolerance * 1e-2 && damping <= 1) return done();
    if (length <= Number.EPSILON) return residual <= 1e-4 ? done() : stalled(residual, iterations);
    const trial = intoBox(
      p.map((x, a) => x + step[a]),
      options,
    );
    const rTrial = Number.isFinite(length) ? Float64Array.from(residuals(trial)) : r;
    const sumTrial = squared(rTrial);
    if (sumTrial < sum) {
      const gain = (sum - sumTrial) / predictedGain(p, trial, gradient, normal);
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
      [p, r, sum] = [trial, rTrial, sumTrial];
      model = linearised(jacobian(p, r), r, p, options);
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  return stalled(model.cosine, maxIterations);
}

/** J seen through its normal equations. */
interface Linearised {
  readonly normal: Float64Array;
  /** Jᵀr. */
  readonly gradient: Float64Array;
  readonly held: Int8Array;
  readonly cosine: number;
}

function linearised(jacobian: Field, r: Float64Array, p: Float64Array, box: Box): Linearised {
  const n = p.length;
  const normal = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  for (let i = 0; i < r.length; i++) {
    for (let a = 0; a < n; a++) {
      const slope = jacobian[i * n + a];
      gradient[a] += slope * r[i];
      for (let b = 0; b < n; b++) normal[a * n + b] += slope * jacobian[i * n + b];
    }
  }
  const held = Int8Array.from(gradient, (g, a) => {
    if (box.low && p[a] <= box.low[a] && g > 0) return -1;
    return box.high && p[a] >= box.high[a] && g < 0 ? 1 : 0;
  });
  const length = Math.sqrt(squared(r));
  let cosine = 0;
  for (let a = 0; a < n; a++) {
    const reach = Math.sqrt(normal[a * n + a]) * length;
    if (!held[a] && reach > 0) cosine = Math.max(cosine, Math.abs(gradient[a]) / reach);
  }
  return { normal, gradient, held, cosine };
}

/** The damped Gauss-Newton step of the free parameters; infinite where the damping is too weak for one. */
function dampedStep({ normal, gradient, held }: Linearised, damping: number): Float64Array {
  const n = held.length;
  const matrix = normal.slice();
  const rhs = gradient.map((g, a) => (held[a] ? 0 : -g));
  for (let a = 0; a < n; a++) {
    matrix[a * n + a] = matrix[a * n + a] * (1 + damping) || 1;
    if (!held[a]) continue;
    for (let b = 0; b < n; b++) {
      matrix[a * n + b] = 0;
      matrix[b * n + a] = 0;
    }
    matrix[a * n + a] = 1;
  }
  const step = solvePositiveDefinite(matrix, rhs);
  return step.ok ? step.value : rhs.fill(Number.POSITIVE_INFINITY);
}

/** By how much the linear model says the sum of squares falls. */
function predictedGain(
  p: Float64Array,
  trial: Float64Array,
  gradient: Float64Array,
  normal: Float64Array,
): number {
  const n = p.length;
  let gain = 0;
  for (let a = 0; a < n; a++) {
    let bend = 0;
    for (let b = 0; b < n; b++) bend += normal[a * n + b] * (trial[b] - p[b]);
    gain -= (trial[a] - p[a]) * (2 * gradient[a] + bend);
  }
  return gain;
}

function largestPart(step: Float64Array, p: Float64Array, scale: Field): number {
  let most = 0;
  for (let a = 0; a < p.length; a++) {
    most = Math.max(most, Math.abs(step[a]) / Math.max(scale[a], Math.abs(p[a])));
  }
  return most;
}

function squared(r: Field): number {
  let sum = 0;
  for (let i = 0; i < r.length; i++) sum += r[i] * r[i];
  return sum;
}

function stalled(residual: number, iterations: number): Result<Fit> {
  const reason = `the fit is not at a minimum after ${iterations} iterations (cosine ${residual.toExponential(1)})`;
  return fail({ model: 'fit', reason, residual, iterations });
}
