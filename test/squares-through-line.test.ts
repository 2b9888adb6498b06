import type { Plan } from '@bloomrail/engine/line/plan';
import { runWholeLine } from '@bloomrail/engine/line/run-line';
import { type SquaresBehind, squaresThroughLine } from '@bloomrail/engine/line/squares-through-line';
import { loopArea } from '@bloomrail/engine/phenomena/metal-flow/quad-mesh';
import { expect, test } from 'vitest';
import { examplePlan } from './support/examples.ts';

/** The first passes of the example, one with a turn before it, on a coarse mesh. */
const example = examplePlan('60e1-by-metal-flow');
const passes = example.settings.passes.slice(0, 3).map((pass) => ({ ...pass, nodes: 80, slices: 6 }));
const plan: Plan = { ...example, settings: { ...example.settings, passes } };

function carried(of: Plan, side: number) {
  const line = squaresThroughLine(of, side);
  const behind: SquaresBehind[] = [];
  for (;;) {
    const step = line.next();
    if (step.done) return { behind, ended: step.value };
    behind.push(step.value);
  }
}

/** m² of all squares and part-squares. */
const areaOf = ({ points, cells }: SquaresBehind['now']): number =>
  cells.reduce((sum, { ring }) => sum + loopArea(ring, points), 0);

test('squares drawn on the bloom go through every pass and still cover the whole section', () => {
  const { behind, ended } = carried(plan, 0.03);
  expect(ended.ok).toBe(true);
  expect(behind.map(({ code }) => code)).toEqual(passes.map(({ code }) => code));
  const run = runWholeLine(plan);
  const visits = run.ok ? run.value.visits : run.failure.visits;
  behind.forEach(({ code, drawn, now }) => {
    const record = visits.find((visit) => visit.code === code)?.record;
    if (record?.kind !== 'pass' || !('exit' in record)) throw new Error(`${code} has no pass`);
    const { area } = record.exit as { readonly area: number };
    expect(now.cells.length).toBe(drawn.cells.length);
    // Lines between points that the steel bends cut a little off; the skin's points stay on the mesh's own skin.
    expect(Math.abs(areaOf(now) / area - 1), code).toBeLessThan(0.01);
  });
}, 60_000);

test('a pass by the handbook knows no squares, and says so', () => {
  const handbook = passes.map((pass, i) => ({
    ...pass,
    model: i === 1 ? ('handbook' as const) : ('flow' as const),
  }));
  const { behind, ended } = carried({ ...plan, settings: { ...plan.settings, passes: handbook } }, 0.03);
  expect(behind.map(({ code }) => code)).toEqual(['B1']);
  expect(ended).toMatchObject({ ok: false, failure: { reason: expect.stringContaining('pass B2') } });
}, 60_000);

test('squares too small to be a picture are refused before anything is rolled', () => {
  const { behind, ended } = carried(plan, 1e-4);
  expect(behind).toEqual([]);
  expect(ended).toMatchObject({ ok: false, failure: { model: 'drawn squares' } });
}, 60_000);
