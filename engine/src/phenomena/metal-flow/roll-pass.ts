import { fail, ok, type Result } from '../../outcome/result.ts';
import { accepted } from './accept.ts';
import { type Bite, biteOf, type Level, levelOf } from './bite.ts';
import { solutionOf } from './flow-result.ts';
import { type MarchRoom, marchRoom } from './march-room.ts';
import { type LevelOutcome, marchUntilSettled, type Settling } from './march-until.ts';
import type { FlowProblem } from './problem.ts';
import { firstGuess, refinedLevel } from './refine-level.ts';
import type { FlowSolution } from './solution.ts';

/**
 * Metal flow in one pass: the section is followed through the bite slice by slice, each slice in generalised plane
 * strain with a uniform speed along the bar, tied to its neighbours by the shear that bends the flow lines, and to the
 * rolls by pressure and friction. The entry speed is found from the balance of the forces along the bar.
 *
 * Fails, never guesses: when the rolls do not reach the bar or do not draw it through, when speed, pull or section do
 * not settle, when energy is off by more than 3 %, or when the axial shear exceeds what the steel can bear.
 * Source: rigid-viscoplastic finite elements after Lee & Kobayashi, axial shear after Orowan (both from memory), in own form.
 */
export function rollPass(problem: FlowProblem): Result<FlowSolution> {
  const bite = biteOf(problem);
  if (!bite) return fail({ model: 'metal flow', reason: 'the rolls do not reach the bar' });
  const made = solved(bite);
  return made.ok ? ok(solutionOf(bite, made.value)) : made;
}

/** The finest level, its last march, and what it took. */
export interface Solved {
  readonly level: Level;
  readonly last: Settling;
  readonly marches: number;
  readonly rejected: number;
  /** Times the pass was begun again with other slices. */
  readonly restarts: number;
}

/** Slices of each attempt over those wished for, and how far velocities ahead are carried on. */
const attempts = [
  { finer: 1, extrapolation: 0.8 },
  { finer: 1.4, extrapolation: 0 },
];

function solved(bite: Bite): Result<Solved> {
  const room = marchRoom(bite);
  let [marches, rejected] = [0, 0];
  for (let restarts = 0; ; restarts++) {
    const made = attempt(bite, room, attempts[restarts]);
    marches += made.marches;
    rejected += made.rejected;
    const last = accepted(bite, made.outcome, marches);
    if (last.ok) return ok({ level: made.level, last: last.value, marches, rejected, restarts });
    if (restarts + 1 === attempts.length || made.outcome.cancelled) return last;
  }
}

interface Attempt {
  readonly level: Level;
  readonly outcome: LevelOutcome;
  readonly marches: number;
  readonly rejected: number;
}

/** From few slices to many: the smooth part of the answer is found where a march is cheap. */
function attempt(bite: Bite, room: MarchRoom, { finer, extrapolation }: (typeof attempts)[number]): Attempt {
  const levels = levelsOf(Math.round(bite.problem.wishes.slices * finer));
  let level = levelOf(bite, levels[0].slices);
  firstGuess(bite, level);
  let [marches, rejected] = [0, 0];
  for (let l = 0; ; l++) {
    const outcome = marchUntilSettled(bite, level, room, {
      most: levels[l].marches,
      extrapolation,
      progress: (share) => bite.problem.wishes.progress?.((l + share) / levels.length) ?? true,
    });
    marches += outcome.marches;
    rejected += outcome.rejected;
    if (l + 1 === levels.length || outcome.cancelled) return { level, outcome, marches, rejected };
    level = outcome.broken
      ? levelOf(bite, levels[l + 1].slices)
      : refinedLevel(bite, level, levels[l + 1].slices);
    if (outcome.broken) firstGuess(bite, level);
  }
}

function levelsOf(slices: number): { readonly slices: number; readonly marches: number }[] {
  const [quarter, half] = [Math.round(slices / 4), Math.round(slices / 2)];
  const finest = { slices, marches: 11 };
  if (slices < 12) return [{ slices: half, marches: 5 }, finest];
  return [{ slices: quarter, marches: 5 }, { slices: half, marches: 3 }, finest];
}
