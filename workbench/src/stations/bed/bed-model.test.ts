import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chordsDown, exaggeration, riseOf } from './bed-model.ts';

test('a bar of 76 m with a camber of 1 per km rises 722 mm over its chord', () => {
  expect(riseOf(1e-3, 76)).toBeCloseTo(0.722, 6);
});

test('the largest bend fits its room at a round factor of 1, 2 or 5 that wastes less than 60 % of it', () => {
  expect(exaggeration(0.04, 0.25)).toBe(5);
  expect(exaggeration(8, 4.4)).toBe(0.5);
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 50, noNaN: true }), (largest) => {
      const drawn = largest * exaggeration(largest, 3);
      return drawn <= 3 * (1 + 1e-9) && drawn > 3 * 0.399;
    }),
  );
});

test('bars that bend toward each other do not cross on the sheet', () => {
  const rises = [0, 30, -40, 52, 0, -52];
  const chords = chordsDown(rises);
  for (let i = 1; i < rises.length; i++) {
    expect(chords[i]).toBeGreaterThan(chords[i - 1]);
    expect(chords[i] - rises[i]).toBeGreaterThan(chords[i - 1] - rises[i - 1]);
  }
});
