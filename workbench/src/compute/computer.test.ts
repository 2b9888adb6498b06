import { readFileSync } from 'node:fs';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import type { runLine } from '@bloomrail/engine/line/run-line';
import type { Visit } from '@bloomrail/engine/line/visit';
import { expect, test } from 'vitest';
import { lineComputer } from './computer.ts';
import type { Answer } from './messages.ts';

const file = new URL('../../../examples/60e1-heavy-rail/plan.json', import.meta.url);
const plan = JSON.parse(readFileSync(file, 'utf8'));

/** A line of three stations that reuses by object, as the engine's line does. */
function threeStations() {
  const first = ['RF', 'U1', 'CT'].map((code) => ({ code }) as Visit);
  let run = 0;
  return function* line() {
    const visits = run++ === 0 ? first : [first[0], { ...first[1] }, { ...first[2] }];
    yield* visits;
    const memory = { charged: undefined, stages: visits.map((visit) => ({ visit })) };
    return { ok: true, value: { visits, memory, summary: {} } };
  } as unknown as typeof runLine;
}

function computer() {
  const answers: Answer[] = [];
  const made = lineComputer({
    runLine: threeStations(),
    name: 'a',
    answer: (answer) => answers.push(answer),
    breathe: () => Promise.resolve(),
    bequeath: () => {},
  });
  return {
    ...made,
    answers,
    kinds: () => answers.flatMap(({ contents }) => contents.map(({ kind }) => kind)),
  };
}

test('the example plan can be read, or the tests below would say nothing', () => {
  expect(readPlan(plan).ok).toBe(true);
});

test('stations that did not change are named by their stamp and not sent again', async () => {
  const { take, answers, kinds } = computer();
  await take({ kind: 'compute', run: 1, plan });
  expect(kinds()).toEqual(['stops', 'visit', 'visit', 'visit', 'done']);
  answers.length = 0;
  await take({ kind: 'compute', run: 2, plan });
  expect(kinds()).toEqual(['stops', 'kept', 'visit', 'visit', 'done']);
  expect(answers[0].contents[1]).toEqual({ kind: 'kept', index: 0, stamp: 'a1' });
});

test('a newer order ends an older one at its next station', async () => {
  const { take, answers } = computer();
  const older = take({ kind: 'compute', run: 1, plan });
  await take({ kind: 'compute', run: 2, plan });
  await older;
  const ends = answers.map(({ run, contents }) => [run, contents[contents.length - 1].kind]);
  expect(ends).toContainEqual([1, 'stopped']);
  expect(ends).toContainEqual([2, 'done']);
});

test('a plan that does not fit comes back with every issue and is not computed', async () => {
  const { take, answers } = computer();
  const passes = plan.settings.passes.map((pass: object) => ({ ...pass, gapMm: 900 }));
  await take({ kind: 'compute', run: 1, plan: { ...plan, settings: { ...plan.settings, passes } } });
  expect(answers.length).toBe(1);
  const [content] = answers[0].contents;
  expect(content.kind === 'issues' && content.issues.length).toBe(passes.length);
});
