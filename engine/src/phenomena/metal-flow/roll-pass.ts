import { fail, ok, type Result } from '../../outcome/result.ts';
import { accepted } from './accept.ts';
import { type Bite, biteOf, type Level, levelOf, sizeOf } from './bite.ts';
import { solutionOf } from './flow-result.ts';
import { type MarchRoom, marchRoom } from './march-room.ts';
import { type LevelOutcome, marchUntilSettled } from './march-until.ts';
import type { FlowProblem } from './problem.ts';
import { firstGuess, refinedLevel } from './refine-level.ts';
import type { FlowSolution } from './solution.ts';
import type { Solved } from './solved.ts';

/**
 * Metal flow in one pass: the section is followed through the bite slice by slice, each slice in generalised plane
 * strain, tied to its neighbours by the shear that bends the flow lines, and to the rolls by pressure and friction. The speed
 * along the bar differs over a section in a few smooth modes. The entry speed is found from the balance of the forces along the bar.
 *
 * Fails, never guesses: when the rolls do not reach the bar or do not draw it through, when a slice, the speed, the
 * warping, the pull or the section does not settle, when energy is off by more than 3 %, or when the axial shear exceeds what the steel can bear.
 * Source: rigid-viscoplastic finite elements after Lee & Kobayashi, axial shear after Orowan (both from memory), in own form.
 */
export function rollPass(problem: FlowProblem): Result<FlowSolution> {
  const bite = biteOf(problem);
  if (!bite) return fail({ model: 'metal flow', reason: 'the rolls do not reach the bar' });
  const made = solved(bite);
  return made.ok ? ok(solutionOf(bite, made.value)) : made;
}

/** Slices of each attempt over those wished for, and how far velocities ahead are carried on. */
const attempts = [
  { finer: 1, extrapolation: 0.8 },
  { finer: 1.4, extrapolation: 0 },
];

/** A bite shorter than this share of the section's size holds the bar so loosely that carrying on overshoots. */
const shortBite = 0.45;

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
  const levels = levelsOf(Math.round(slicesFor(bite) * finer));
  let level = levelOf(bite, levels[0].slices, levels[0].ahead);
  firstGuess(bite, level);
  let [marches, rejected] = [0, 0];
  for (let l = 0; ; l++) {
    const outcome = marchUntilSettled(bite, level, room, {
      most: levels[l].marches,
      isRough: l + 1 < levels.length,
      extrapolation: bite.length < shortBite * sizeOf(bite) ? 0 : extrapolation,
      progress: (share) => bite.problem.wishes.progress?.((l + share) / levels.length) ?? true,
    });
    marches += outcome.marches;
    rejected += outcome.rejected;
    if (l + 1 === levels.length || outcome.cancelled) return { level, outcome, marches, rejected };
    level = nextLevel(bite, level, outcome, levels[l + 1]);
  }
}

/** Slices thinner than this share of the section's size tie each other down: marches multiply, and nothing is won. */
const thinnest = 1 / 25;

const slicesFor = (bite: Bite): number =>
  Math.max(4, Math.min(bite.problem.wishes.slices, Math.round(bite.length / (thinnest * sizeOf(bite)))));

/** What broke off teaches nothing: the next level then begins as if it were the first. */
function nextLevel(bite: Bite, level: Level, { broken }: LevelOutcome, { slices, ahead }: LevelPlan): Level {
  if (!broken) return refinedLevel(bite, level, slices, ahead);
  const fresh = levelOf(bite, slices, ahead);
  firstGuess(bite, fresh);
  return fresh;
}

interface LevelPlan {
  /** Slices in the bite, and ahead of it. */
  readonly slices: number;
  readonly ahead: number;
  readonly marches: number;
}

/** Each level halves the slices of the one before; a preview does with two. */
function levelsOf(slices: number): LevelPlan[] {
  if (slices < 12) {
    const half = Math.max(2, Math.round(slices / 2));
    return [
      { slices: half, ahead: 1, marches: 5 },
      { slices: 2 * half, ahead: 2, marches: 25 },
    ];
  }
  const quarter = Math.round(slices / 4);
  return [
    { slices: quarter, ahead: 1, marches: 5 },
    { slices: 2 * quarter, ahead: 2, marches: 3 },
    { slices: 4 * quarter, ahead: 4, marches: 19 },
  ];
}
