import type { Field } from '../../outcome/field.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import type { Conductor } from './conductor.ts';
import type { Conducted, HeatProblem, HeatState } from './heat-problem.ts';
import { implicitStep } from './implicit-step.ts';
import { accept, type March, march, openHeat } from './march.ts';

export interface ConductOptions {
  /** K, allowed error of one step in temperature; 0.7 unless given. The share of the phase change is held to 0.02. */
  readonly tolerance?: number;
  /** s, first step; 0.5 unless given. */
  readonly firstStep?: number;
  /** s, largest step; 900 unless given. */
  readonly largestStep?: number;
  /** Called at the start and after each accepted step; the rows are valid during the call only. */
  readonly observe?: (time: number, temperature: Field, share: Field) => void;
}

const shareTolerance = 0.02;
const mostShareChange = 0.15;

/**
 * Transient conduction in the section with steps that fit themselves: variable-step BDF2, started by backward Euler,
 * controlled by what a straight extrapolation of temperature and share missed.
 *
 * duration   s, positive.
 * A sudden start (a film so good that the skin jumps) is crossed in steps of a millionth of the duration, whatever
 * they miss. Fails when Newton does not settle in such a step. `gained` closes with the change of heat
 * content to `residual`, which is small against one part in a thousand of the heat that passed.
 */
export function conduct(
  conductor: Conductor,
  problem: HeatProblem,
  start: HeatState,
  duration: number,
  options: ConductOptions = {},
): Result<Conducted> {
  const { tolerance = 0.7, largestStep = 900, observe } = options;
  const smallestStep = 1e-6 * duration;
  const run = march(conductor, problem, start, Math.min(0.02, tolerance / 10));
  let [time, last, steps] = [0, 0, 0];
  let dt = Math.min(options.firstStep ?? 0.5, duration);
  observe?.(0, run.temperature.now, run.share.now);
  while (time < duration) {
    dt = fitted(dt, duration - time, largestStep);
    const w = last > 0 ? dt / last : 0;
    const step = implicitStep(run, time, dt, w);
    const miss = step.settled ? missOf(run, w, tolerance) : 9;
    if (!step.settled && dt <= smallestStep) return unsettled(run, time, step.change);
    if (miss > 1 && dt > smallestStep) {
      dt = Math.max(dt * Math.max(0.3, 0.85 / Math.sqrt(miss)), smallestStep);
      continue;
    }
    accept(run);
    time = duration - time - dt < 1e-9 * duration ? duration : time + dt;
    last = dt;
    steps++;
    observe?.(time, run.temperature.now, run.share.now);
    dt *= Math.min(2, 0.85 / Math.sqrt(Math.max(miss, 1e-3)));
  }
  return ok(concluded(run, steps));
}

/**
 * The same in a fixed number of equal backward-Euler steps, for the seconds between two passes: 3 to 6 steps are within
 * some kelvin at the skin. Iterated like the other; about a millisecond for 200 nodes.
 */
export function conductFor(
  conductor: Conductor,
  problem: HeatProblem,
  start: HeatState,
  duration: number,
  steps = 4,
  observe?: ConductOptions['observe'],
): Result<Conducted> {
  const run = march(conductor, problem, start);
  const dt = duration / steps;
  for (let each = 0; each < steps; each++) {
    const step = implicitStep(run, each * dt, dt, 0, each > 0 ? 1 : 0);
    if (!step.settled) return unsettled(run, each * dt, step.change);
    accept(run);
    observe?.((each + 1) * dt, run.temperature.now, run.share.now);
  }
  return ok(concluded(run, steps));
}

/** Never beyond the end, and no crumb of a step left before it. */
function fitted(dt: number, left: number, largest: number): number {
  const wanted = Math.min(dt, largest);
  if (wanted >= left * (1 - 1e-9)) return left;
  return Math.min(wanted, left / 2);
}

/** Error of the step over what is allowed. */
function missOf({ temperature, share, problem }: March, w: number, tolerance: number): number {
  const inTemperature = (0.3 * worstOf(temperature, w)) / tolerance;
  if (!problem.change) return inTemperature;
  const inShare = (0.3 * worstOf(share, w)) / shareTolerance;
  return Math.max(inTemperature, inShare, worstOf(share, 0) / mostShareChange);
}

function worstOf({ old, now, new: next }: March['share'], w: number): number {
  let worst = 0;
  for (let i = 0; i < now.length; i++) {
    worst = Math.max(worst, Math.abs(next[i] - now[i] - w * (now[i] - old[i])));
  }
  return worst;
}

function unsettled({ iterations }: March, time: number, change: number): Result<never> {
  const reason = `temperatures did not settle at ${time.toFixed(1)} s: ${change.toPrecision(2)} K left open`;
  return fail({ model: 'conduction', reason, residual: change, iterations });
}

function concluded(run: March, steps: number): Conducted {
  const gained: Record<string, number> = {};
  run.problem.surface.forEach(({ name }, c) => {
    gained[name] = (gained[name] ?? 0) + run.gained.now[c];
  });
  return {
    temperature: run.temperature.now,
    psi: run.psi.now,
    share: run.share.now,
    gained,
    residual: openHeat(run),
    steps,
    iterations: run.iterations,
  };
}
