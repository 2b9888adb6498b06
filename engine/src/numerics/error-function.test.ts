import { expect, test } from 'vitest';
import { erf, erfc, scaledErfc } from './error-function.ts';

// Abramowitz and Stegun, table 7.1 and 7.2 (10 to 12 digits)
const table: readonly (readonly [x: number, erf: number])[] = [
  [0, 0],
  [0.1, 0.112462916],
  [0.5, 0.5204998778],
  [1, 0.8427007929],
  [1.5, 0.9661051465],
  [1.9, 0.9927904292],
  [2, 0.995322265],
];

test('the error function agrees with the tables to their last digit', () => {
  for (const [x, value] of table) {
    expect(erf(x)).toBeCloseTo(value, 9);
    expect(erfc(-x)).toBeCloseTo(1 + value, 9);
  }
  expect(erfc(3)).toBeCloseTo(2.209049699858544e-5, 15);
  expect(erfc(5)).toBeCloseTo(1.5374597944280349e-12, 22);
});

test('series and continued fraction meet at 2 to 12 digits', () => {
  const slope = (-2 / Math.sqrt(Math.PI)) * Math.exp(-4);
  expect((erfc(2 - 1e-9) - erfc(2) + slope * 1e-9) / erfc(2)).toBeCloseTo(0, 12);
});

test('the scaled function goes to 1/(x√π) far out, where its factors have left the number range', () => {
  expect(scaledErfc(1e4) * 1e4 * Math.sqrt(Math.PI)).toBeCloseTo(1, 8);
  expect(scaledErfc(1)).toBeCloseTo(Math.E * erfc(1), 14);
});
