import { expect, test } from 'vitest';
import heavy from '../../../examples/60e1-heavy-rail/plan.json' with { type: 'json' };
import unfinished from '../../../examples/mistakes/not-a-plan-yet.json' with { type: 'json' };
import { writePlan } from './plan.ts';
import { readPlan } from './read-plan.ts';

type Loose = ReturnType<typeof structuredClone<typeof heavy>>;

function issuesAfter(change: (plan: Loose) => unknown) {
  const plan = structuredClone(heavy);
  change(plan);
  const reading = readPlan(plan);
  return reading.ok ? [] : reading.issues;
}

test('a plan that was read is written back as it stood', () => {
  const reading = readPlan(heavy);
  expect(reading.ok && writePlan(reading.plan)).toEqual(heavy);
});

test('all problems of a file come at once: values out of range, names that lead nowhere, lists that do not fit', () => {
  const reading = readPlan(unfinished);
  const messages = reading.ok ? [] : reading.issues.map(({ message }) => message);
  expect(messages).toEqual([
    'order.rails.0.lengthM is 120 m; allowed: a number',
    'bloom.lengthM is 92.5 m; allowed: 15 m or less',
    'mill.saws.kerfMm is missing; allowed: a number',
    'settings.descaler.presureBar is 220 bar; allowed: nothing: this entry is not known here',
    'settings.passes.3.gapMm is -50 mm; allowed: 2 mm or more',
    expect.stringMatching(/^order\.grade is R26O; allowed: one of R200, /),
    'settings.furnace.zones has 3 entries; the zones of the furnace are 4',
    expect.stringMatching(/^settings\.passes\.7\.groove is K9; allowed: one of K1, /),
  ]);
});

test.each<[string, string, (plan: Loose) => unknown]>([
  [
    'a profile that is not in the library',
    'order.profile',
    (plan) => Object.assign(plan.order, { profile: '61E9' }),
  ],
  [
    'an order without rails',
    'order.rails',
    (plan) => Object.assign(plan.order, { rails: [{ lengthM: 60, count: 0 }] }),
  ],
  [
    'two passes of one code',
    'settings.passes.1.code',
    (plan) => Object.assign(plan.settings.passes[1], { code: 'B1' }),
  ],
  [
    'a pass on a stand that is not there',
    'settings.passes.0.stand',
    (plan) => Object.assign(plan.settings.passes[0], { stand: 'BD9' }),
  ],
  [
    'one roller offset too few',
    'settings.straighteners.sideOffsetsMm',
    (plan) => plan.settings.straighteners.sideOffsetsMm.pop(),
  ],
  [
    'a finisher for an unknown rail',
    'mill.stands.4.grooves.0.profile',
    (plan) => Object.assign(plan.mill.stands[4].grooves[0], { profile: 'R9' }),
  ],
  [
    'a bloom that is all corner',
    'bloom.cornerRadiusMm',
    (plan) => Object.assign(plan.bloom, { widthMm: 100, cornerRadiusMm: 60 }),
  ],
])('%s is found', (_, path, change) => {
  expect(issuesAfter(change).map((issue) => issue.path)).toEqual([path]);
});

test.each([[undefined], [null], [7], ['plan'], [[]], [{}]])('%j is no plan, and says so', (content) => {
  const reading = readPlan(content);
  expect(reading.ok).toBe(false);
  expect(!reading.ok && reading.issues.length).toBeGreaterThan(0);
});
