import type { Plan } from '@bloomrail/engine/line/plan';
import { type Memory, runLine, runWholeLine } from '@bloomrail/engine/line/run-line';
import { passesOf } from '@bloomrail/engine/line/summary';
import { sectionProperties } from '@bloomrail/engine/section/properties';
import { expect, test } from 'vitest';
import { examplePlan } from './support/examples.ts';

const plan = examplePlan('60e1-heavy-rail');
const run = lineOf(plan);

function lineOf(of: Plan) {
  const result = runWholeLine(of);
  if (!result.ok) throw new Error(`${result.failure.code}: ${result.failure.reason}`);
  return result.value;
}

test('mass closes to 1e-9 and energy to 0.5 % over the whole line', () => {
  expect(run.balance.massRelative).toBeLessThan(1e-9);
  expect(run.balance.energyRelative).toBeLessThan(5e-3);
});

test('the bar that leaves a stop is the bar that reaches the next', () => {
  run.visits.slice(1).forEach(({ record }, i) => {
    expect(record.balance.massInKg).toBe(run.visits[i].record.balance.massOutKg);
    expect(record.leaving.places.middle.clock).toBeGreaterThanOrEqual(
      run.visits[i].record.leaving.places.middle.clock,
    );
  });
});

test('one bloom weighs about as much as a small truck and gives about 120 m (common practice, no source)', () => {
  expect(run.balance.massIn).toBeGreaterThan(6000);
  expect(run.balance.massIn).toBeLessThan(9000);
  const longest = Math.max(...run.visits[run.visits.length - 1].record.leaving.pieces);
  expect(longest).toBeCloseTo(120, 1);
});

test('a bloom has at least nine times the section of its rail (IOM3, Rail manufacturing)', () => {
  expect(run.summary.elongation).toBeGreaterThan(9);
});

test('the last pass rolls at 850 to 1 000 °C (common practice, no source)', () => {
  expect(run.summary.finishing).toBeGreaterThan(850);
  expect(run.summary.finishing).toBeLessThan(1000);
});

test('yield from bloom to rail is 85 to 96 % (UK Energy Consumption Guide 74: 94.8 % in the mean; crops of a long bar less)', () => {
  expect(run.summary.yield).toBeGreaterThan(0.85);
  expect(run.summary.yield).toBeLessThan(0.96);
});

test('fuel lies within the spread of continuous reheating furnaces, 1.13 to 10.99 GJ/t (DETR Energy Consumption Guide 74)', () => {
  expect(run.summary.fuel).toBeGreaterThan(1.13e6);
  expect(run.summary.fuel).toBeLessThan(10.99e6);
});

test('the finished rail weighs what its profile weighs, within the mass tolerance −0.5 to +1.5 % (IRS T-12)', () => {
  const perMetre =
    run.visits[run.visits.length - 1].record.leaving.mass /
    run.visits[run.visits.length - 1].record.leaving.length;
  expect(perMetre / 60.21).toBeGreaterThan(0.995);
  expect(perMetre / 60.21).toBeLessThan(1.015);
});

test('every pass hands on what it was given: section times length follows the density of hot steel', () => {
  for (const { entry, exit, elongation } of passesOf(run.visits)) {
    expect(sectionProperties(exit.outline).area).toBeCloseTo(exit.area, 9);
    expect((exit.area * exit.length) / (entry.area * entry.length)).toBeCloseTo(1, 2);
    expect(entry.area / exit.area).toBeCloseTo(elongation, 6);
  }
});

test('stops before a change are taken over, and the answer is the same as from the start', () => {
  const passes = plan.settings.passes.map((pass, i) =>
    i === 12 ? { ...pass, speed: pass.speed * 0.95 } : pass,
  );
  const changed: Plan = { ...plan, settings: { ...plan.settings, passes } };
  const warm = runWholeLine(changed, run.memory);
  if (!warm.ok) throw new Error(warm.failure.reason);
  expect(warm.value.reused).toBe(2 + 12);
  expect(warm.value.visits).toEqual(lineOf(changed).visits);
});

test('a run that is broken off leaves its finished stops to the next one', () => {
  const passes = plan.settings.passes.map((pass, i) =>
    i === 12 ? { ...pass, speed: pass.speed * 0.97 } : pass,
  );
  const changed: Plan = { ...plan, settings: { ...plan.settings, passes } };
  let memory: Memory | undefined;
  const line = runLine(changed, run.memory, (left) => {
    memory = left;
  });
  for (let i = 0; i < 2 + 14; i++) line.next();
  const again = runWholeLine(changed, memory);
  expect(again.ok && again.value.reused).toBe(2 + 14);
  const back = runWholeLine(plan, memory);
  expect(back.ok && back.value.reused).toBe(run.visits.length);
});

test('a rhythm that is quicker than a stand is found at the last pass on that stand', () => {
  const quick: Plan = { ...plan, settings: { ...plan.settings, rhythm: 60 } };
  const found = lineOf(quick).visits.filter(({ record }) =>
    record.findings.some(({ check }) => check === 'stand-taken-by-one-bar'),
  );
  expect(found.map(({ code }) => code)).toEqual(expect.arrayContaining(['F3', 'U3']));
  expect(run.visits.flatMap(({ record }) => record.findings).map(({ check }) => check)).not.toContain(
    'stand-taken-by-one-bar',
  );
});

test('the plan full of mistakes is computed to its end, and each mistake is found where it was made', () => {
  const wrong = lineOf(examplePlan('mistakes'));
  const found = wrong.visits.flatMap(({ code, record }) =>
    record.findings.filter(({ level }) => level === 'outside').map(({ check }) => `${code} ${check}`),
  );
  const places = new Set(found.map((each) => each.split(' ')[0]));
  expect([...places]).toEqual(expect.arrayContaining(['RF', 'DS', 'B1', 'U2', 'E2', 'HS', 'CB', 'ST', 'CT']));
  expect(wrong.visits.some(({ record }) => record.findings.some(({ stop }) => stop === true))).toBe(true);
});

test('a light rail from a smaller bloom runs to its end and keeps the books', () => {
  const light = lineOf(examplePlan('49e1-light-rail'));
  expect(light.balance.massRelative).toBeLessThan(1e-9);
  expect(light.balance.energyRelative).toBeLessThan(5e-3);
  expect(light.summary.elongation).toBeGreaterThan(9);
});

test('a pass that becomes the last on its stand says so, although it was computed before', () => {
  const shorter: Plan = {
    ...plan,
    settings: { ...plan.settings, passes: plan.settings.passes.slice(0, 15) },
  };
  const [cold, warm] = [runWholeLine(shorter), runWholeLine(shorter, run.memory)];
  const visitsOf = (result: typeof cold) => (result.ok ? result.value.visits : result.failure.visits);
  const names = visitsOf(warm)[16].record.measures.map(({ name }) => name);
  expect(visitsOf(warm)[16].code).toBe('U2');
  expect(names).toContain('stand taken by one bar');
  expect(visitsOf(warm)).toEqual(visitsOf(cold));
});
