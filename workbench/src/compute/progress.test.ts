import type { Visit } from '@bloomrail/engine/line/visit';
import { expect, test } from 'vitest';
import type { Content } from './messages.ts';
import { answered, nothingYet, ordered, type Progress } from './progress.ts';

const stops = ['RF', 'U1', 'CT'].map((code) => ({ code, title: code, group: 'heat' as const, path: code }));
const visit = (code: string, version: number) => ({ code, version }) as unknown as Visit;
const take = (progress: Progress, ...contents: Content[]) =>
  answered(progress, { run: progress.run, contents });
const states = ({ stations }: Progress) => stations.map(({ state }) => state);

const fresh = (index: number, version = 1): Content => ({
  kind: 'visit',
  index,
  stamp: `${stops[index].code}${version}`,
  visit: visit(stops[index].code, version),
});
const kept = (index: number, version = 1): Content => ({
  kind: 'kept',
  index,
  stamp: `${stops[index].code}${version}`,
});
const done: Content = { kind: 'done', summary: {} as never };
const first = take(ordered(nothingYet, 1), { kind: 'stops', stops }, fresh(0), fresh(1), fresh(2), done);

test('stations appear one by one, each usable at once', () => {
  const half = take(ordered(nothingYet, 1), { kind: 'stops', stops }, fresh(0));
  expect(states(half)).toEqual(['now', 'absent', 'absent']);
  expect(states(first)).toEqual(['now', 'now', 'now']);
  expect(first.status).toBe('done');
});

test('a move keeps the stations before it and makes those after it old until they answer', () => {
  const moving = take(ordered(first, 2), { kind: 'stops', stops }, kept(0), fresh(1, 2));
  expect(states(moving)).toEqual(['now', 'now', 'old']);
  expect(moving.stations[1].was).toEqual(visit('U1', 1));
  expect(moving.stations[0].was).toBeUndefined();
});

test('moves that follow each other are compared with the last settled line', () => {
  const moving = take(ordered(first, 2), kept(0), fresh(1, 2));
  const again = take(ordered(moving, 3), kept(0), fresh(1, 3));
  expect(again.stations[1].was).toEqual(visit('U1', 1));
  const settled = take(again, fresh(2, 3), done);
  const next = ordered(settled, 4);
  expect(next.stations).toBe(settled.stations);
  expect(take(next, kept(0)).stations[1].was).toBeUndefined();
});

test('a move taken back before the line settled brings the stored results back at once', () => {
  const moving = take(ordered(first, 2), kept(0), fresh(1, 2));
  const back = take(ordered(moving, 3), kept(0), kept(1, 1), kept(2, 1), done);
  expect(back.stations[1].visit).toEqual(visit('U1', 1));
  expect(back.stations.map(({ was }) => was)).toEqual([undefined, undefined, undefined]);
  expect(states(back)).toEqual(['now', 'now', 'now']);
});

test('an answer to an earlier order changes nothing on the page', () => {
  const moving = ordered(first, 2);
  expect(answered(moving, { run: 1, contents: [fresh(1, 9)] }).stations).toBe(moving.stations);
});

test('where a model has no answer, nothing from there on stands', () => {
  const failure = { model: 'stand', reason: 'The bar does not bite.' };
  const failed = take(ordered(first, 2), kept(0), { kind: 'failed', code: 'U1', failure });
  expect(states(failed)).toEqual(['now', 'old', 'old']);
  expect(failed.failure?.failure.reason).toBe('The bar does not bite.');
});
