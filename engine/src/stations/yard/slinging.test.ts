import { expect, test } from 'vitest';
import { slingingPoints } from './slinging.ts';

test.each([
  [6, 2],
  [13, 2],
  [19.5, 3],
  [25, 4],
  [36, 6],
  [60, 10],
  [72, 12],
  [100, 16],
  [108, 17],
  [120, 19],
])('a rail of %d m is lifted at %d points or more (RDSO guideline, worked out)', (length, points) => {
  expect(slingingPoints(length)).toBe(points);
});
