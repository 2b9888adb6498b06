import { expect, test } from 'vitest';
import { capital, counted } from './words.ts';

test('one is one rail and many are rails, with their thousands apart', () => {
  expect(counted(1, 'rail')).toBe('1 rail');
  expect(counted(0, 'rail')).toBe('0 rails');
  expect(counted(1248, 'wagon')).toMatch(/^1\s248 wagons$/);
});

test('a name at the head of a row begins large', () => {
  expect(capital('force, foot roll')).toBe('Force, foot roll');
});
