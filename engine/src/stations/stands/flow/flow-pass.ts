import type { Bar } from '../../../bar/bar.ts';
import { balanceOf } from '../../../bar/heat-content.ts';
import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { FlowProblem } from '../../../phenomena/metal-flow/problem.ts';
import { rollPass } from '../../../phenomena/metal-flow/roll-pass.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import type { Stand } from '../equipment.ts';
import type { Happened } from '../happened.ts';
import type { Prepared } from '../prepare.ts';
import type { PassSettings } from '../settings.ts';
import { arriving } from '../visits.ts';
import { type Ahead, aheadOf } from './ahead.ts';
import { onWhole } from './entering-mesh.ts';
import { flowCourse } from './flow-course.ts';
import { flowLeaving } from './flow-leaving.ts';
import { flowVisits } from './flow-visits.ts';
import { statedPass } from './stated.ts';

/** What metal flow adds to a pass: what was known before, the question, and the answer. */
export interface Flowed {
  readonly ahead: Ahead;
  readonly problem: FlowProblem;
  readonly solution: FlowSolution;
}

/**
 * A pass by metal flow, solved at the middle of the bar. Fails with the pass named where the model has no answer; the
 * handbook is never put in its place.
 */
export function flowPass(
  bar: Bar,
  settings: PassSettings,
  stand: Stand,
  prepared: Prepared,
): Result<Happened> {
  const ahead = aheadOf(bar, settings, stand, prepared);
  if (!ahead.ok) return inPass(settings, ahead);
  const problem = problemAt(ahead.value);
  if (!problem.ok) return inPass(settings, problem);
  const solved = rollPass(problem.value);
  if (!solved.ok) return inPass(settings, solved);
  return rolledBy({ ahead: ahead.value, problem: problem.value, solution: solved.value });
}

/** Times before the pass are those of the handbook's speed, which moves the temperature by less than a kelvin. */
function problemAt(ahead: Ahead): Result<FlowProblem> {
  const { bar, prepared, handbook, section, water, entering, law } = ahead;
  const arrived = arriving(bar, 'middle', handbook.timing, section, water);
  if (!arrived.ok) return arrived;
  const [biting] = onWhole(prepared, entering, [arrived.value.temperature], law).temperatures;
  return ok(statedPass(ahead, biting));
}

function rolledBy(flow: Flowed): Result<Happened> {
  const { ahead, solution } = flow;
  const { bar, settings, stand, prepared, law } = ahead;
  const course = flowCourse(ahead, solution);
  const visits = flowVisits(ahead, course, solution);
  if (!visits.ok) return inPass(settings, visits);
  const { bar: leaving, corrections, gained } = flowLeaving(ahead, course, solution, visits.value);
  const balance = balanceOf(bar, leaving, {}, gained, law);
  return ok({
    ...{ bar, leaving, settings, stand, prepared, course, visits: visits.value, corrections, balance },
    flow,
  });
}

function inPass<T>({ code }: PassSettings, failed: Result<T> & { readonly ok: false }): Result<never> {
  const { failure } = failed;
  return fail({ ...failure, reason: `pass ${code}: ${failure.reason}` });
}
