import { expect, test } from 'vitest';
import { normal, seededRandom } from './random.ts';

const draws = (count: number, draw: () => number) => Array.from({ length: count }, draw);

test('the same seed draws the same numbers, another seed others', () => {
  expect(draws(5, seededRandom(7))).toEqual(draws(5, seededRandom(7)));
  expect(draws(5, seededRandom(7))).not.toEqual(draws(5, seededRandom(8)));
});

test('draws fill 0 … 1 evenly', () => {
  const counts = new Int32Array(16);
  for (const u of draws(160_000, seededRandom(3))) counts[Math.floor(16 * u)]++;
  // 10 000 expected in each; five deviations of √(160 000 · 15/256) ≈ 97.
  for (const count of counts) expect(Math.abs(count - 10_000)).toBeLessThan(485);
});

test('normal draws have mean 0, deviation 1 and no skew', () => {
  const random = seededRandom(11);
  const xs = draws(40_000, () => normal(random));
  const moment = (power: number) => xs.reduce((sum, x) => sum + x ** power, 0) / xs.length;
  // Five standard errors: √(1, 2, 15, 96 / 40 000).
  expect(Math.abs(moment(1))).toBeLessThan(0.025);
  expect(Math.abs(moment(2) - 1)).toBeLessThan(0.036);
  expect(Math.abs(moment(3))).toBeLessThan(0.097);
  expect(Math.abs(moment(4) - 3)).toBeLessThan(0.245);
});
