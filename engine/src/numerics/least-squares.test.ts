import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Field } from '../outcome/field.ts';
import { must } from '../outcome/result.ts';
import { leastSquares } from './least-squares.ts';
import { normal, seededRandom } from './random.ts';

// J. Moré, B. Garbow, K. Hillstrom, ACM TOMS 7 (1981) 17, problems 1, 13, 7 and 15; from memory.
const rosenbrock = (p: Field) => [10 * (p[1] - p[0] ** 2), 1 - p[0]];
const powell = ([a, b, c, d]: Field) => [
  a + 10 * b,
  Math.sqrt(5) * (c - d),
  (b - 2 * c) ** 2,
  Math.sqrt(10) * (a - d) ** 2,
];
const helix = ([x, y, z]: Field) => {
  const turn = Math.atan2(y, x) / (2 * Math.PI);
  return [10 * (z - 10 * turn), 10 * (Math.hypot(x, y) - 1), z];
};
const kowalik = (p: Field) => {
  const y = [0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246];
  const u = [4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625];
  return y.map((yi, i) => yi - (p[0] * (u[i] ** 2 + u[i] * p[1])) / (u[i] ** 2 + u[i] * p[2] + p[3]));
};

const hundredths = (low: number, high: number) =>
  fc.integer({ min: 100 * low, max: 100 * high }).map((n) => n / 100);

test('the bent valley is followed to its end', () => {
  const { parameters } = must(leastSquares(rosenbrock, [-1.2, 1]));
  expect(parameters[0]).toBeCloseTo(1, 7);
  expect(parameters[1]).toBeCloseTo(1, 7);
});

test('a minimum where the Jacobian loses rank is still reached', () => {
  const { parameters, sumOfSquares } = must(leastSquares(powell, [3, -1, 0, 1]));
  for (const p of parameters) expect(Math.abs(p)).toBeLessThan(1e-4);
  expect(sumOfSquares).toBeLessThan(1e-16);
});

test('a helical valley and a fit that leaves a residual end at the published values', () => {
  expect(must(leastSquares(helix, [-1, 0, 0])).parameters[0]).toBeCloseTo(1, 7);
  // Published sum of squares: 3.07505… e-4.
  const { sumOfSquares } = must(leastSquares(kowalik, [0.25, 0.39, 0.415, 0.39]));
  expect(Math.floor(sumOfSquares * 1e9)).toBe(307505);
});

test('a bound in the way holds its parameter, and the others find their best beside it', () => {
  const { parameters, held } = must(leastSquares(rosenbrock, [-1.2, 1], { high: [0.5, 9] }));
  expect(parameters[0]).toBe(0.5);
  expect(parameters[1]).toBeCloseTo(0.25, 7);
  expect([...held]).toEqual([1, 0]);
});

test('a given Jacobian and differences lead to the same fit', () => {
  const jacobian = (p: Field) => [-20 * p[0], 10, -1, 0];
  const { parameters } = must(leastSquares(rosenbrock, [-1.2, 1], { jacobian, tolerance: 1e-12 }));
  expect(parameters[0]).toBeCloseTo(1, 12);
  expect(parameters[1]).toBeCloseTo(1, 12);
});

test('a straight line through noisy readings is the textbook line, inside or at the bounds, from any start', () => {
  const problems = fc.record({
    seed: fc.integer(),
    start: fc.tuple(hundredths(-5, 5), hundredths(-5, 5)),
    cap: hundredths(-1, 3),
  });
  fc.assert(
    fc.property(problems, ({ seed, start, cap }) => {
      const random = seededRandom(seed);
      const xs = Array.from({ length: 12 }, (_, i) => i - 5.5);
      const ys = xs.map((x) => 1 + 0.5 * x + 0.2 * normal(random));
      const residuals = (p: Field) => xs.map((x, i) => p[0] + p[1] * x - ys[i]);
      const fit = must(leastSquares(residuals, start, { high: [cap, 10], low: [-10, -10], scale: [1, 1] }));
      // The xs are centred: mean and slope are independent, so the bound on one leaves the other alone.
      const mean = ys.reduce((sum, y) => sum + y, 0) / 12;
      const slope = ys.reduce((sum, y, i) => sum + y * xs[i], 0) / 143;
      expect(fit.parameters[0]).toBeCloseTo(Math.min(mean, cap), 6);
      expect(fit.parameters[1]).toBeCloseTo(slope, 6);
      expect(fit.normal[0]).toBeCloseTo(12, 4);
      expect(fit.normal[3]).toBeCloseTo(143, 4);
      expect(fit.residual).toBeLessThan(1e-6);
    }),
  );
});

test('a fit cut short, and one that starts nowhere, are no answers', () => {
  const short = leastSquares(rosenbrock, [-1.2, 1], { maxIterations: 3 });
  expect(short.ok ? undefined : short.failure.iterations).toBe(3);
  expect(short.ok ? 0 : short.failure.residual).toBeGreaterThan(1e-3);
  expect(leastSquares(() => [Number.NaN], [1]).ok).toBe(false);
});

test('a trial outside the domain of the model is stepped back from', () => {
  const logarithm = (p: Field) => [Math.log(p[0]) - 3];
  expect(must(leastSquares(logarithm, [60])).parameters[0]).toBeCloseTo(Math.exp(3), 5);
});
