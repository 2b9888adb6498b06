import { expect, test } from 'vitest';
import type { Stop } from '../line/line-model.ts';
import { nextFinding } from './next-finding.ts';

const line = [0, 1, 0, 0, 2, 0].map((count) => ({ findings: Array(count).fill({}) }) as unknown as Stop);

test('the next finding may lie around the end of the line', () => {
  expect([0, 1, 4, 5].map((at) => nextFinding(line, at, 1))).toEqual([1, 4, 1, 1]);
  expect([0, 1, 4, 5].map((at) => nextFinding(line, at, -1))).toEqual([4, 4, 1, 4]);
});

test('from the line itself it is the first one, backward the last', () => {
  expect(nextFinding(line, -1, 1)).toBe(1);
  expect(nextFinding(line, -1, -1)).toBe(4);
});

test('where nothing was found nobody travels', () => {
  expect(nextFinding([line[0], line[2]], 1, 1)).toBe(1);
});
