import { expect, test } from 'vitest';
import { must, ok, type Result } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { scaled } from '../../../section/transform.ts';
import { stretches } from '../drawn-squares/stretch.ts';
import { quadMeshOfAbout } from '../meshing/quads.ts';
import type { FlowProblem, FlowSteel } from '../problem.ts';
import { rollPass } from '../roll-pass.ts';
import { leadSteel } from './lead-steel.ts';
import { scaledDown, toHotBar } from './model-block.ts';
import { steppedRolling } from './stepped-rolling.ts';

/** Hardens and flows with the rate as lead does, four times as hard. */
const hard: FlowSteel = {
  ...leadSteel(),
  name: 'four times lead',
  strength: (e, T) => 4 * leadSteel().strength(e, T),
};

/** A bloom between flat rolls, gap in m. */
const flatPass =
  (gap: number) =>
  (entering: Outline): Result<FlowProblem> => {
    const mesh = quadMeshOfAbout(entering, { x: 0, y: 0 }, 120);
    if (!mesh.ok) return mesh;
    const nodes = mesh.value.xy.length / 2;
    const profile = [-0.3, gap / 2, 0.3, gap / 2];
    return ok({
      mesh: mesh.value,
      temperature: new Float64Array(nodes).fill(1000),
      strain: new Float64Array(nodes),
      steel: hard,
      rolls: [{ name: 'upper', side: 'top', axis: 0.45 + gap / 2, profile, turning: 5, friction: 0.4 }],
      wishes: { slices: 12 },
    });
  };

const bloom = rectangle(0.2, 0.2, 0.015);

test('a block of like steel at 1 : 10 rolls to the same shape, and its loads carried over are those of the bar', () => {
  const posed = must(flatPass(0.16)(bloom));
  const [bar, model] = [must(rollPass(posed)), must(rollPass(scaledDown(posed, 0.1)))];
  const [own, carried] = [bar.rolls[0], toHotBar(model.rolls[0], 0.1, 4)];
  // The iterations end where changes are below 0.1 %; the same path at both scales ends in the same place.
  expect(model.elongation / bar.elongation).toBeCloseTo(1, 9);
  for (const load of ['force', 'torque', 'power', 'contactArea', 'contactLength', 'meanPressure'] as const) {
    expect(carried[load] / own[load]).toBeCloseTo(1, 6);
  }
});

test('squares on a block rolled flat in two steps with a turn: every one keeps its volume', () => {
  const model = (gap: number) => (entering: Outline) => {
    const posed = flatPass(gap)(scaled(entering, 10));
    return posed.ok ? ok(scaledDown(posed.value, 0.1)) : posed;
  };
  const turn = { turn: Math.PI / 2, dx: 0, dy: 0 };
  const steps = [{ problem: model(0.17) }, { problem: model(0.18), placing: turn }];
  const rolled = must(
    steppedRolling(scaled(bloom, 0.1), steps, { side: 0.002, through: { x: 0, y: 0 } }, rollPass),
  );
  for (const { solution, before, after } of rolled.steps) {
    const whole = stretches(before, after).filter(({ isWhole }) => isWhole);
    // The model keeps the volume of each element to about half a percent (its drift and that of its penalty).
    for (const { along } of whole) expect(Math.abs(along / solution.elongation - 1)).toBeLessThan(0.01);
    expect(whole.length).toBeGreaterThan(60);
  }
});
