import { expect, test } from 'vitest';
import { barLength, barsBetween } from './frame-bars.ts';

test('bars of the frame are counted from the zero of the drawing, whatever its window', () => {
  expect(barsBetween(0, 100, 20, 20)).toEqual([
    [20, 40],
    [60, 80],
  ]);
  expect(barsBetween(0, 100, -10, 20)).toEqual([
    [0, 10],
    [30, 50],
    [70, 90],
  ]);
});

test('one bar is a round length of about 30 px', () => {
  expect(barLength(3000)).toBeCloseTo(0.01, 12);
  expect(barLength(1900)).toBeCloseTo(0.02, 12);
  expect(barLength(7)).toBeCloseTo(5, 12);
});
