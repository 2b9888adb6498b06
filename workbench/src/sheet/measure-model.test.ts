import type { Measure } from '@bloomrail/engine/bar/measure';
import { expect, test } from 'vitest';
import { levelOf, measureRow } from './measure-model.ts';

const force: Measure = {
  name: 'force',
  part: 'horizontal roll',
  unit: 'kN',
  value: 5.18e6,
  low: 4.9e6,
  high: 5.4e6,
  limit: 6e6,
  law: 'Sims 1954',
  sure: 'computed',
};

test('a load stands beside its limit and its range, and says that it is not calibrated', () => {
  const row = measureRow(force);
  expect(row).toMatchObject({
    name: 'force, horizontal roll',
    value: '≈ 5 180',
    limit: 'of 6 000 kN',
    range: '4 900 to 5 400',
  });
  expect(row.bar).toBeCloseTo((0.86 * 5.18) / 6, 12);
  expect(measureRow({ ...force, sure: 'calibrated' }).value).toBe('5 180');
});

test('a value inside whose range reaches the limit is near it', () => {
  expect(levelOf(force)).toBe('inside');
  expect(levelOf({ ...force, high: 6.1e6 })).toBe('near');
  expect(levelOf({ ...force, value: 5.5e6 })).toBe('near');
  expect(levelOf({ ...force, value: 6.1e6 })).toBe('outside');
});

test('a least allowed value is read from the other side', () => {
  const impact: Measure = {
    name: 'impact',
    part: '',
    unit: 'MPa',
    value: 0.8e6,
    limit: 0.6e6,
    limitIs: 'least',
    law: '',
    sure: 'computed',
  };
  expect(levelOf(impact)).toBe('inside');
  expect(levelOf({ ...impact, value: 0.5e6 })).toBe('outside');
  expect(levelOf({ ...impact, low: 0.55e6 })).toBe('near');
  expect(measureRow(impact).limit).toBe('at least 0.60 MPa');
});

test('what the last move left unchanged in print is not marked', () => {
  expect(measureRow(force, { ...force, value: 5.1803e6 }).was).toBeUndefined();
  expect(measureRow(force, { ...force, value: 5.3e6 }).was).toBe('5 300');
});
