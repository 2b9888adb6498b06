import { readFileSync } from 'node:fs';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { type Memory, type runLine, type Stage, withLatest } from '@bloomrail/engine/line/run-line';
import { expect, test } from 'vitest';
import { lineComputer } from './computer.ts';
import type { Answer, Legacy } from './messages.ts';

const file = new URL('../../../examples/60e1-heavy-rail/plan.json', import.meta.url);
const plan = JSON.parse(readFileSync(file, 'utf8'));

const codes = ['RF', 'U1', 'CT'];

/** A line of three stations that remembers as the engine's line does; a station is its code and the plan's name. */
const threeStations = function* line(
  { name }: { name: string },
  before: Memory | undefined,
  remember: (memory: Memory) => void,
) {
  const charged = before?.charged ?? ({ key: 'bloom', bar: { of: 'bloom' } } as never as Memory['charged']);
  let memory: Memory = { charged, stages: before?.stages ?? [] };
  let bar = charged?.bar;
  for (const code of codes) {
    const key = code === 'RF' ? code : `${code} ${name}`;
    const old = memory.stages.find((each) => each.key === key && each.entering === bar);
    const stage =
      old ?? ({ key, entering: bar, leaving: { of: key }, visit: { code, key } } as never as Stage);
    memory = withLatest(memory, stage);
    bar = stage.leaving;
    remember(memory);
    yield stage.visit;
  }
  return { ok: true, value: { visits: [], memory, summary: {} } };
} as unknown as typeof runLine;

function computer(name = 'a', line = threeStations) {
  const answers: Answer[] = [];
  const left: Legacy[] = [];
  const made = lineComputer({
    runLine: line,
    name,
    answer: (answer) => answers.push(answer),
    breathe: () => Promise.resolve(),
    bequeath: (legacy) => left.push(structuredClone(legacy)),
  });
  const kinds = () => answers.flatMap(({ contents }) => contents.map(({ kind }) => kind));
  return { ...made, answers, kinds, left };
}

const order = (run: number, name = 'one') => ({ kind: 'compute', run, plan: { ...plan, name } }) as const;

test('the example plan can be read, or the tests below would say nothing', () => {
  expect(readPlan(plan).ok).toBe(true);
});

test('stations that did not change are named by their stamp and not sent again', async () => {
  const { take, answers, kinds } = computer();
  await take(order(1));
  expect(kinds()).toEqual(['stops', 'visit', 'visit', 'visit', 'done']);
  answers.length = 0;
  await take(order(2, 'two'));
  expect(kinds()).toEqual(['stops', 'kept', 'visit', 'visit', 'done']);
  expect(answers[0].contents[1]).toEqual({ kind: 'kept', index: 0, stamp: 'a1' });
});

test('a newer order ends an older one at its next station, and what was finished is kept', async () => {
  const { take, answers, kinds } = computer();
  const older = take(order(1));
  await take(order(2));
  await older;
  const ends = answers.map(({ run, contents }) => [run, contents[contents.length - 1].kind]);
  expect(ends).toContainEqual([1, 'stopped']);
  expect(ends).toContainEqual([2, 'done']);
  expect(kinds().filter((kind) => kind === 'visit').length).toBe(3);
});

test('a move taken back is answered from what is kept', async () => {
  const { take, answers, kinds } = computer();
  await take(order(1));
  await take(order(2, 'two'));
  answers.length = 0;
  await take(order(3));
  expect(kinds()).toEqual(['stops', 'kept', 'kept', 'kept', 'done']);
});

test('what one computer has finished the other goes on from', async () => {
  const [a, b] = [computer('a'), computer('b')];
  await a.take(order(1));
  await a.take(order(2, 'two'));
  for (const legacy of a.left) b.inherit(legacy);
  await b.take(order(3));
  await b.take(order(4, 'two'));
  expect(b.kinds().filter((kind) => kind === 'visit')).toEqual([]);
});

test('a model that breaks down is told in its place and not left as silence', async () => {
  const broken = function* line() {
    yield { code: 'RF' };
    throw new RangeError('no such node');
  } as unknown as typeof runLine;
  const { take, answers } = computer('a', broken);
  await take(order(1));
  const [last] = answers[answers.length - 1].contents.slice(-1);
  expect(last).toMatchObject({ kind: 'failed', code: 'DS' });
});

test('a plan that does not fit comes back with every issue and is not computed', async () => {
  const { take, answers } = computer();
  const passes = plan.settings.passes.map((pass: object) => ({ ...pass, gapMm: 900 }));
  await take({ kind: 'compute', run: 1, plan: { ...plan, settings: { ...plan.settings, passes } } });
  expect(answers.length).toBe(1);
  const [content] = answers[0].contents;
  expect(content.kind === 'issues' && content.issues.length).toBe(passes.length);
});
