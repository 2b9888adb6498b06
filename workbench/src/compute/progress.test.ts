import type { Visit } from '@bloomrail/engine/line/run-line';
import { expect, test } from 'vitest';
import type { Content } from './messages.ts';
import { answered, nothingYet, ordered, type Progress } from './progress.ts';

const stops = ['RF', 'U1', 'CT'].map((code) => ({ code, title: code, group: 'heat' as const, path: code }));
const visit = (code: string, version = 1) => ({ code, version }) as unknown as Visit;
const take = (progress: Progress, ...contents: Content[]) =>
  contents.reduce((state, content) => answered(state, { run: state.run, ...content }), progress);
const states = ({ stations }: Progress) => stations.map(({ state }) => state);

const visitAt = (index: number, version = 1): Content => ({
  kind: 'visit',
  index,
  visit: visit(stops[index].code, version),
});
const done: Content = { kind: 'done', summary: {} as never };
const first = take(
  ordered(nothingYet, 1),
  { kind: 'stops', stops },
  visitAt(0),
  visitAt(1),
  visitAt(2),
  done,
);

test('stations appear one by one, each usable at once', () => {
  const half = take(ordered(nothingYet, 1), { kind: 'stops', stops }, visitAt(0));
  expect(states(half)).toEqual(['now', 'absent', 'absent']);
  expect(states(first)).toEqual(['now', 'now', 'now']);
  expect(first.status).toBe('done');
});

test('a move keeps the stations before it and makes those after it old until they answer', () => {
  const moving = take(ordered(first, 2), { kind: 'stops', stops }, { kind: 'kept', index: 0 }, visitAt(1, 2));
  expect(states(moving)).toEqual(['now', 'now', 'old']);
  expect(moving.stations[1].was).toEqual(visit('U1', 1));
  expect(moving.stations[0].was).toBeUndefined();
});

test('moves that follow each other are compared with the last settled line', () => {
  const moving = take(ordered(first, 2), { kind: 'stops', stops }, { kind: 'kept', index: 0 }, visitAt(1, 2));
  const again = take(ordered(moving, 3), { kind: 'stops', stops }, { kind: 'kept', index: 0 }, visitAt(1, 3));
  expect(again.stations[1].was).toEqual(visit('U1', 1));
  const settled = take(again, visitAt(2, 3), done);
  expect(ordered(settled, 4).stations[1].was).toBeUndefined();
});

test('an answer to an earlier order is passed over', () => {
  const moving = ordered(first, 2);
  expect(answered(moving, { run: 1, ...visitAt(1, 9) })).toBe(moving);
});

test('where a model has no answer, nothing from there on stands', () => {
  const failure = { model: 'stand', reason: 'The bar does not bite.' };
  const failed = take(ordered(first, 2), { kind: 'kept', index: 0 }, { kind: 'failed', code: 'U1', failure });
  expect(states(failed)).toEqual(['now', 'old', 'old']);
  expect(failed.failure?.failure.reason).toBe('The bar does not bite.');
});
