import { expect, test } from 'vitest';
import { fail, must, ok, type Result } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { affineFlow } from '../drawn-squares/affine-flow.fixture.ts';
import { stretches } from '../drawn-squares/stretch.ts';
import { quadMesh } from '../meshing/quads.ts';
import type { FlowProblem } from '../problem.ts';
import { leadSteel } from './lead-steel.ts';
import { type RollingStep, steppedRolling } from './stepped-rolling.ts';

const quarter = { x: 0, y: 0 };
const flow = { rates: { xx: 0.2, xy: 0, yx: 0, yy: -0.8 }, duration: 0.05, slices: 6 };
const [wider, lower] = [1.01 ** 6, 0.96 ** 6];

const even = (problem: FlowProblem) => ok(affineFlow(problem.mesh, flow));

function problem(outline: Outline): Result<FlowProblem> {
  const mesh = quadMesh(outline, { size: 0.004, symmetry: quarter });
  if (!mesh.ok) return mesh;
  const zero = new Float64Array(mesh.value.xy.length / 2);
  return ok({
    mesh: mesh.value,
    temperature: zero.map(() => 20),
    strain: zero,
    steel: leadSteel(),
    rolls: [],
    wishes: { slices: 6 },
  });
}

const block = rectangle(0.025, 0.025, 0);
const turned: RollingStep = { problem, placing: { turn: Math.PI / 2, dx: 0, dy: 0 } };

test('a block rolled in three steps with a quarter turn stretches by the product of the steps', () => {
  const { steps, outline } = must(
    steppedRolling(block, [{ problem }, { problem }, turned], { side: 0.0025 }, even),
  );
  expect(steps).toHaveLength(3);
  const { bounds } = sectionProperties(outline);
  expect((bounds.right - bounds.left) / 0.025).toBeCloseTo(lower ** 2 * wider, 12);
  expect((bounds.top - bounds.bottom) / 0.025).toBeCloseTo(wider ** 2 * lower, 12);
  for (const { along, principal } of stretches(steps[0].before, steps[2].after)) {
    expect(along).toBeCloseTo((wider * lower) ** -3, 9);
    expect(principal[0]).toBeCloseTo(wider ** 2 * lower, 9);
    expect(principal[1]).toBeCloseTo(wider * lower ** 2, 9);
  }
});

test('each step gets the section that the one before left, turned as told', () => {
  const seen: number[] = [];
  const watched: RollingStep = {
    ...turned,
    problem: (entering) => {
      const { bounds } = sectionProperties(entering);
      seen.push(bounds.right - bounds.left);
      return problem(entering);
    },
  };
  must(steppedRolling(block, [watched, watched], { side: 0.005 }, even));
  expect(seen[0]).toBeCloseTo(0.025, 12);
  expect(seen[1]).toBeCloseTo(0.025 * lower, 12);
});

test('a step without a solution is named by its number, and so are squares that cannot be drawn', () => {
  let calls = 0;
  const once = (posed: FlowProblem) =>
    ++calls > 1 ? fail({ model: 'metal flow', reason: 'does not bite', residual: 0.3 }) : even(posed);
  const broken = steppedRolling(block, [{ problem }, { problem }], { side: 0.005 }, once);
  expect(broken).toEqual(fail({ model: 'metal flow', reason: 'Step 2 of 2: does not bite', residual: 0.3 }));
  const undrawn = steppedRolling(block, [{ problem }], { side: 0 }, even);
  expect(undrawn.ok ? '' : undrawn.failure.reason).toContain('Step 1 of 1');
});
