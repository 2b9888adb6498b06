import { createHash } from 'node:crypto';
import { recordSchemas, writeRecord } from '@bloomrail/engine/line/records';
import { runWholeLine } from '@bloomrail/engine/line/run-line';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { expect, test } from 'vitest';
import { examplePlan } from './support/examples.ts';

/** The tuned example, every pass by metal flow, on a mesh that is small enough for a test. */
const plan = examplePlan('60e1-by-metal-flow');
const settings = { ...plan.settings, passModel: { model: 'flow' as const, nodes: 200, slices: 12 } };
const result = runWholeLine({ ...plan, settings });
if (!result.ok) throw new Error(`${result.failure.code}: ${result.failure.reason}`);
const run = result.value;
const passes = run.visits.flatMap(({ record }) => (record.kind === 'pass' ? [record as PassRecord] : []));

test('mass closes to 1e-9 and energy to 0.5 % with every pass by metal flow', () => {
  expect(run.balance.massRelative).toBeLessThan(1e-9);
  expect(run.balance.energyRelative).toBeLessThan(5e-3);
});

test('all eighteen passes are answered by metal flow, soundly: no new beginnings, energy within 3 %', () => {
  expect(passes).toHaveLength(18);
  for (const { code, flow } of passes) {
    expect(flow, code).toBeDefined();
    expect(flow?.restarts, code).toBe(0);
    expect(Math.abs(flow?.energyError ?? 1), code).toBeLessThan(0.03);
  }
});

test('no pass leaves a fin that a roll shop would see, and the bar leaves as tall and wide as a hot 60E1', () => {
  for (const { code, fin } of passes) expect(fin, code).toBeLessThan(20e-6);
  const { exit } = passes[17];
  expect(exit.width / 1.0127).toBeGreaterThan(0.172 - 0.0011);
  expect(exit.width / 1.0127).toBeLessThan(0.172 + 0.0006);
  expect(exit.height / 1.0127).toBeGreaterThan(0.15 - 0.001);
  expect(exit.height / 1.0127).toBeLessThan(0.15 + 0.0015);
});

test('each pass stands beside the handbook: forces within a factor of three, as far as formulas for shapes reach', () => {
  for (const { code, places, flow } of passes) {
    const ratio = places.middle.force / (flow?.handbook.force ?? 0);
    expect(ratio, code).toBeGreaterThan(0.6);
    expect(ratio, code).toBeLessThan(3);
  }
});

test('a record with its slices comes back from its file as it was', () => {
  const written = JSON.parse(JSON.stringify(writeRecord(passes[17])));
  const read = recordSchemas.pass.parse(written);
  expect(hash(writeRecord(read as PassRecord))).toBe(hash(written));
  expect(JSON.stringify(written).length).toBeLessThan(150_000);
});

const hash = (value: unknown): string => createHash('sha256').update(JSON.stringify(value)).digest('hex');

test('a pass without an answer names itself, and the handbook is not put in its place', () => {
  const slippery = plan.mill.stands.map((stand) =>
    stand.code === 'BD1' ? { ...stand, friction: 0.1 } : stand,
  );
  const failed = runWholeLine({ ...plan, settings, mill: { ...plan.mill, stands: slippery } });
  expect(failed).toMatchObject({ ok: false, failure: { code: 'B1', model: 'metal flow' } });
  if (!failed.ok) expect(failed.failure.reason).toContain('pass B1');
});
