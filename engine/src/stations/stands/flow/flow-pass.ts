import type { Bar } from '../../../bar/bar.ts';
import { balanceOf } from '../../../bar/heat-content.ts';
import type { Finding } from '../../../outcome/finding.ts';
import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { FlowProblem } from '../../../phenomena/metal-flow/problem.ts';
import { rollPass } from '../../../phenomena/metal-flow/roll-pass.ts';
import type { Stand } from '../equipment.ts';
import type { Happened } from '../happened.ts';
import type { Prepared } from '../prepare.ts';
import type { PassSettings } from '../settings.ts';
import { arriving } from '../visits.ts';
import { type Ahead, aheadOf } from './ahead.ts';
import { onWhole } from './entering-mesh.ts';
import { fitFindings } from './fits.ts';
import { flowCourse } from './flow-course.ts';
import { flowLeaving } from './flow-leaving.ts';
import { flowVisits } from './flow-visits.ts';
import type { Flowed } from './flowed.ts';
import { statedPass } from './stated.ts';
import { untouched } from './untouched.ts';

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
  if (ahead.value.handbook.bites.length === 0) return untouched(ahead.value);
  const problem = problemAt(ahead.value);
  if (!problem.ok) return inPass(settings, problem);
  const solved = rollPass(problem.value);
  if (!solved.ok) return inPass(settings, solved, fitFindings(prepared));
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

/** A failure with its pass named, and what was in the way before it. */
function inPass<T>(
  { code }: PassSettings,
  { failure }: Result<T> & { readonly ok: false },
  before: readonly Finding[] = [],
): Result<never> {
  const why = before.length > 0 ? `. ${before.map(({ text }) => text).join(' ')}` : '';
  const reason = `pass ${code}: ${failure.reason}${why}`;
  return fail({ ...failure, reason });
}
