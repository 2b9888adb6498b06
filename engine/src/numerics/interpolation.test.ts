import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linear, monotoneCubic } from './interpolation.ts';

const number = fc.integer({ min: -10_000, max: 10_000 }).map((n) => n / 100);
const tables = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 500 }), number), { minLength: 1, maxLength: 12 })
  .map((rows) => {
    let x = -7;
    const xs = rows.map(([gap]) => {
      x += gap / 100;
      return x;
    });
    return { xs, ys: rows.map(([, y]) => y) };
  });

test.each([linear, monotoneCubic])('a curve goes through its points', (through) => {
  fc.assert(
    fc.property(tables, ({ xs, ys }) => {
      const curve = through(xs, ys);
      xs.forEach((x, i) => {
        expect(curve(x)).toBeCloseTo(ys[i], 9);
      });
    }),
  );
});

test.each([linear, monotoneCubic])('between two points a curve stays between their heights', (through) => {
  fc.assert(
    fc.property(tables, fc.integer({ min: 0, max: 64 }), ({ xs, ys }, part) => {
      const curve = through(xs, ys);
      for (let i = 1; i < xs.length; i++) {
        const y = curve(xs[i - 1] + (part / 64) * (xs[i] - xs[i - 1]));
        expect(y).toBeGreaterThanOrEqual(Math.min(ys[i - 1], ys[i]) - 1e-9);
        expect(y).toBeLessThanOrEqual(Math.max(ys[i - 1], ys[i]) + 1e-9);
      }
    }),
  );
});

test('a rising table gives a rising curve', () => {
  fc.assert(
    fc.property(tables, ({ xs, ys }) => {
      const curve = monotoneCubic(
        xs,
        ys.slice().sort((a, b) => a - b),
      );
      let before = Number.NEGATIVE_INFINITY;
      for (let k = 0; k <= 60; k++) {
        const y = curve(xs[0] + (k / 60) * (xs[xs.length - 1] - xs[0]));
        expect(y).toBeGreaterThanOrEqual(before - 1e-9);
        before = y;
      }
    }),
  );
});

test('the smooth curve has no kink at its points', () => {
  const curve = monotoneCubic([0, 1, 3, 4], [0, 1, 2, 6]);
  for (const x of [1, 3]) {
    const h = 1e-6;
    expect((curve(x + h) - curve(x)) / h).toBeCloseTo((curve(x) - curve(x - h)) / h, 4);
  }
});

test('halving the spacing of a smooth monotone table divides the worst deviation by four at least', () => {
  const worst = (pieces: number) => {
    const xs = Array.from({ length: pieces + 1 }, (_, i) => i / pieces);
    const curve = monotoneCubic(xs, xs.map(Math.exp));
    return Math.max(...Array.from({ length: 501 }, (_, i) => Math.abs(curve(i / 500) - Math.exp(i / 500))));
  };
  // One-sided slopes at the ends hold the order down to two there.
  expect(Math.log2(worst(16) / worst(32))).toBeGreaterThan(1.9);
});

test.each([linear, monotoneCubic])(
  'outside its table a curve holds the end value, or goes on straight if asked',
  (through) => {
    const [held, goesOn] = [through([0, 1, 2], [0, 1, 4]), through([0, 1, 2], [0, 1, 4], 'extrapolate')];
    expect([held(-5), held(7)]).toEqual([0, 4]);
    const slope = (goesOn(2) - goesOn(2 - 1e-7)) / 1e-7;
    expect(goesOn(3)).toBeCloseTo(4 + slope, 5);
    expect(goesOn(-1)).toBeCloseTo(-(goesOn(1e-7) / 1e-7), 5);
    expect(through([3], [8], 'extrapolate')(99)).toBe(8);
  },
);

test('a table that is not one is refused', () => {
  expect(() => linear([0, 0], [1, 2])).toThrow('xs must ascend: 0, then 0');
  expect(() => linear([], [])).toThrow('0 xs for 0 ys');
  expect(() => monotoneCubic([0, 1], [1])).toThrow('2 xs for 1 ys');
  expect(linear([0, 1], [0, 1])(Number.NaN)).toBeNaN();
  expect(monotoneCubic([0, 1], [0, 1])(Number.NaN)).toBeNaN();
});
