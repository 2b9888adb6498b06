import { expect, test } from 'vitest';
import { clock, decimalsFor, figure, measured } from './numbers.ts';

test('a figure leaves the unit to the head of its row', () => {
  expect(figure(5.18e6, 'kN')).toBe('5 180');
  expect(figure(0.0244, 'mm')).toBe('24.4');
  expect(figure(-0.0003, 'mm')).toBe('−0.3');
  expect(figure(0.274, 'one', 2)).toBe('0.27');
});

test('a small measure keeps two digits that say something', () => {
  expect(measured(0.00027, 'mm')).toBe('0.27');
  expect(measured(0.0384, 'mm')).toBe('38.4');
  expect(measured(0.031, 'one')).toBe('0.031');
  expect(decimalsFor(0, 'kN')).toBe(0);
});

test('time is minutes and seconds under an hour, then hours and minutes', () => {
  expect(clock(128)).toBe('2:08');
  expect(clock(11_340)).toBe('3 h 09');
  expect(clock(-90)).toBe('−1:30');
  expect(clock(-0.2)).toBe('0:00');
});
