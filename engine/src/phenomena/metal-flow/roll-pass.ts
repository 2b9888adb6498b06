import { fail, ok, type Result } from '../../outcome/result.ts';
import { type Bite, biteOf, type Level, levelOf } from './bite.ts';
import { solutionOf } from './flow-result.ts';
import { marchRoom } from './march.ts';
import { type LevelOutcome, marchUntilSettled } from './march-until.ts';
import type { FlowProblem } from './problem.ts';
import { firstGuess, refinedLevel } from './refine-level.ts';
import type { FlowSolution } from './solution.ts';

/**
 * Metal flow in one pass: the section is followed through the bite slice by slice, each slice in generalised plane
 * strain with a uniform speed along the bar, tied to its neighbours by the shear that bends the flow lines, and to the
 * rolls by pressure and friction. The entry speed is found from the balance of the forces along the bar.
 *
 * Fails, never guesses: when the rolls do not reach the bar or do not bite, when speed, pull or section do not settle,
 * when energy is off by more than 3 %, or when the axial shear exceeds what the steel can bear.
 * Source: rigid-viscoplastic finite elements after Lee & Kobayashi; axial shear after Orowan; both in own form.
 */
export function rollPass(problem: FlowProblem): Result<FlowSolution> {
  const bite = biteOf(problem);
  if (!bite) return fail({ model: 'metal flow', reason: 'the rolls do not reach the bar' });
  const made = solved(bite, problem.wishes.slices);
  if (!made.ok) return made;
  return solutionOf(bite, made.value);
}

/** The last level, and how it was reached. */
export interface Solved {
  readonly level: Level;
  readonly outcome: LevelOutcome;
  readonly marches: number;
  readonly rejected: number;
  readonly restarts: number;
}

function solved(bite: Bite, slices: number): Result<Solved> {
  const room = marchRoom(bite);
  const counts =
    slices >= 12
      ? [Math.round(slices / 4), Math.round(slices / 2), slices]
      : [Math.round(slices / 2), slices];
  const most = slices >= 12 ? [5, 3, 9] : [5, 9];
  let level = levelOf(bite, counts[0]);
  firstGuess(bite, level);
  let [marches, rejected] = [0, 0];
  for (let l = 0; ; l++) {
    const isLast = l + 1 === counts.length;
    const outcome = marchUntilSettled(bite, level, room, {
      most: most[l],
      isCoarsest: level.slices[0].isNew,
      extrapolation: 0.8,
      progress: (j) => bite.problem.wishes.progress?.((l + j / most[l]) / counts.length) ?? true,
    });
    marches += outcome.marches;
    rejected += outcome.rejected;
    if (isLast) return finished({ level, outcome, marches, rejected, restarts: 0 });
    level = outcome.broken ? levelOf(bite, counts[l + 1]) : refinedLevel(bite, level, counts[l + 1]);
    if (outcome.broken) firstGuess(bite, level);
  }
}

function finished(made: Solved): Result<Solved> {
  const { outcome } = made;
  if (outcome.last && !outcome.broken) return ok(made);
  const where = outcome.broken
    ? `${outcome.broken.reason} in slice ${outcome.broken.slice + 1}`
    : 'nothing came out';
  return fail({ model: 'metal flow', reason: where, iterations: made.marches });
}
