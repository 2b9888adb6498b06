import { expect, test } from 'vitest';
import { ownerOf } from './setting-owner.ts';

const stops = [
  { code: 'RF', path: 'settings.furnace' },
  { code: 'B1', path: 'settings.passes.1' },
  { code: 'B10', path: 'settings.passes.10' },
  { code: 'HS', path: 'settings.saws' },
];

test('advice leads to the station where the named setting is moved', () => {
  expect(ownerOf('settings.saws.coldLengthsM', stops)).toBe('HS');
  expect(ownerOf('settings.passes.10.gapMm', stops)).toBe('B10');
  expect(ownerOf('settings.passes.1.gapMm', stops)).toBe('B1');
});

test('the rhythm of the line is moved at the furnace', () => {
  expect(ownerOf('settings.rhythmS', stops)).toBe('RF');
});

test('what belongs to the mill is moved at no station', () => {
  expect(ownerOf('mill.furnace.efficiencyPercent', stops)).toBeUndefined();
});
