import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../numerics/random.ts';
import { must } from '../../outcome/result.ts';
import { biteOf, levelOf } from './bite.ts';
import { marchRoom } from './march-room.ts';
import { marchUntilSettled } from './march-until.ts';
import { mirroredPass, wholePass } from './mirrored-pass.fixture.ts';
import { flatPass, plainSteel } from './passes.fixture.ts';
import { drawnPass } from './random-passes.fixture.ts';
import { firstGuess } from './refine-level.ts';
import { rollLoads } from './roll-loads.ts';
import { momentOnRoll } from './roll-moment.fixture.ts';
import { rollPass } from './roll-pass.ts';

describe('a rail between four rolls, drawn at random', () => {
  // Seed 16 draws a half section.
  const { part, problem } = drawnPass('universal', seededRandom(16));
  const solution = must(rollPass(problem));

  test('seen from behind gives the same pass, node by node, and bends the other way', () => {
    const seen = must(rollPass(mirroredPass(problem)));
    expect(part).toBe('half');
    // Sums run in another order: round-off, carried through thirteen marches.
    expect(seen.elongation / solution.elongation).toBeCloseTo(1, 6);
    expect(seen.bending.momentY / solution.bending.momentY).toBeCloseTo(-1, 5);
    seen.rolls.forEach(({ force, turning }, r) => {
      expect(force / solution.rolls[r].force).toBeCloseTo(1, 6);
      expect(turning / solution.rolls[r].turning).toBeCloseTo(1, 6);
    });
    const [exit, seenExit] = [solution, seen].map(({ sections }) => sections[sections.length - 1].xy);
    for (let at = 0; at < exit.length; at += 2) expect(seenExit[at] + exit[at]).toBeCloseTo(0, 7);
  });

  test('computed whole says the same as its half, and does not lean to a side', () => {
    const whole = must(rollPass(wholePass(problem)));
    const [above, below, foot, head] = whole.rolls;
    // Five of the whole's eight modes do not lean to a side: with these the half has the same equations, and what is
    // left is where each stopped: a speed that changes by less than 0.1 % leaves forces open to some 0.5 %.
    const half = must(rollPass({ ...problem, wishes: { ...problem.wishes, warping: 5 } }));
    const [top, footBefore, headBefore] = half.rolls;
    expect(whole.elongation / half.elongation).toBeCloseTo(1, 4);
    for (const [a, b] of [
      [above, top],
      [foot, footBefore],
      [head, headBefore],
    ])
      expect(Math.abs(a.force / b.force - 1)).toBeLessThan(0.005);
    expect(below.force / above.force).toBeCloseTo(1, 4);
    expect(below.torque / above.torque).toBeCloseTo(1, 4);
    expect(Math.abs(whole.bending.momentX / whole.bending.momentY)).toBeLessThan(1e-4);
  });

  test('idle rolls take no power', () => {
    const [top, foot, head] = solution.rolls;
    expect(Math.abs(foot.power / top.power)).toBeLessThan(0.005);
    expect(Math.abs(head.power / top.power)).toBeLessThan(0.005);
    expect(foot.force).toBeGreaterThan(0);
    expect(head.force).toBeGreaterThan(0);
  });

  test('no element bears more shear along the bar than the steel can, but for single corners', () => {
    const shares = solution.steps.flatMap(({ shearShare }) => Array.from(shearShare));
    expect(shares.filter((share) => share > 1).length / shares.length).toBeLessThan(0.01);
    expect(Math.max(...shares)).toBe(solution.quality.largestShear);
  });
});

test('what is said of the rolls is said of the march that was taken, though no more marches were left', () => {
  const bar = { h0: 0.06, b0: 0.06, h1: 0.048, R: 0.3, speed: 2, friction: 0.35 };
  const given = { part: 'quarter', nodes: 80, steel: plainSteel, wishes: { slices: 6 } } as const;
  const bite = biteOf(flatPass(bar, given));
  if (!bite) throw new Error('the rolls do not reach the bar');
  const level = levelOf(bite, 6, 1);
  firstGuess(bite, level);
  const wishes = { most: 4, isRough: false, extrapolation: 0, progress: () => true };
  const { last, settled } = marchUntilSettled(bite, level, marchRoom(bite), wishes);
  expect(settled).toBe(false);
  if (!last) throw new Error('no march came to its end');
  const [top] = rollLoads(bite, last);
  expect((2 * top.power) / last.energy.rolls).toBeCloseTo(1, 12);
});

describe('moments of a pass without tension', () => {
  test.each([
    [0.06, 0.06, 0.048],
    [0.06, 0.12, 0.048],
    [0.133, 0.133, 0.1197],
  ])('%d × %d to %d m: what presses and rubs on the roll turns it as its power says', (h0, b0, h1) => {
    const bar = { h0, b0, h1, R: 0.3, speed: 2, friction: 0.35 };
    const problem = flatPass(bar, {
      ...{ part: 'quarter', nodes: 150, steel: plainSteel, wishes: { slices: 20 } },
    });
    const solution = must(rollPass(problem));
    const apart = momentOnRoll(solution, problem.rolls[0]) / solution.rolls[0].torque - 1;
    // Half a slice of the lever arm, which is about half of the bite.
    expect(Math.abs(apart)).toBeLessThan(1 / solution.steps.length);
  });
});
