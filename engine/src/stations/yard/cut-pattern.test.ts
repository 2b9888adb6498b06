import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutOrder, fullestPattern } from './cut-pattern.ts';

const order = fc.array(
  fc.record({
    length: fc.integer({ min: 600, max: 13000 }).map((cm) => cm / 100),
    count: fc.integer({ min: 0, max: 40 }),
  }),
  { minLength: 1, maxLength: 6 },
);
const bar = fc.integer({ min: 3000, max: 15000 }).map((cm) => cm / 100);
const kerfs = fc.integer({ min: 0, max: 12 }).map((mm) => mm / 1000);

test('every rail that fits a bar is cut, and none twice', () => {
  fc.assert(
    fc.property(order, bar, kerfs, (wanted, usable, kerf) => {
      const patterns = cutOrder(wanted, usable, kerf);
      for (const { length } of wanted) {
        const ordered = wanted
          .filter((each) => each.length === length)
          .reduce((sum, each) => sum + each.count, 0);
        const cut = patterns.reduce(
          (sum, p) => sum + p.bars * p.rails.filter((rail) => rail === length).length,
          0,
        );
        expect(cut).toBe(length <= usable ? ordered : 0);
      }
    }),
    { seed: 7, numRuns: 60 },
  );
});

test('no pattern is longer than its bar, kerfs included', () => {
  fc.assert(
    fc.property(order, bar, kerfs, (wanted, usable, kerf) => {
      for (const { rails } of cutOrder(wanted, usable, kerf)) {
        const used = rails.reduce((sum, rail) => sum + rail, 0) + kerf * (rails.length - 1);
        expect(used).toBeLessThanOrEqual(usable + 1e-6);
      }
    }),
    { seed: 8, numRuns: 60 },
  );
});

test('the fullest pattern is as full as trying every combination finds', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1200, max: 6000 }), { minLength: 1, maxLength: 3 }),
      bar,
      (lengths, usable) => {
        const wanted = lengths.map((cm) => ({ length: cm / 100, count: 5 }));
        const filled = (counts: readonly number[]) =>
          counts.reduce((sum, n, i) => sum + n * wanted[i].length, 0);
        const every = lengths.reduce<number[][]>(
          (found, _) => found.flatMap((counts) => [0, 1, 2, 3, 4, 5].map((n) => [...counts, n])),
          [[]],
        );
        const best = Math.max(...every.map(filled).filter((length) => length <= usable + 1e-9));
        expect(filled(fullestPattern(wanted, usable, 0))).toBeCloseTo(best, 6);
      },
    ),
    { seed: 9, numRuns: 100 },
  );
});

test('two of 36 m and two of 24 m fill a bar of 120 m and its kerfs', () => {
  const [pattern] = cutOrder(
    [
      { length: 36, count: 2 },
      { length: 24, count: 2 },
    ],
    120.03,
    0.008,
  );
  expect(pattern).toEqual({ rails: [36, 36, 24, 24], bars: 1 });
});

test('four rails of 30 m do not fit 120.01 m: three kerfs of 6 mm are missing', () => {
  expect(fullestPattern([{ length: 30, count: 4 }], 120.01, 0.006)).toEqual([3]);
  expect(fullestPattern([{ length: 30, count: 4 }], 120.018, 0.006)).toEqual([4]);
});
