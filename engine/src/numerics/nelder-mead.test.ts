import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Field } from '../outcome/field.ts';
import { must } from '../outcome/result.ts';
import { nelderMead } from './nelder-mead.ts';

const valley = (p: Field) => 100 * (p[1] - p[0] ** 2) ** 2 + (1 - p[0]) ** 2;

test('the bent valley (Rosenbrock 1960) is followed to its end', () => {
  const { parameters } = must(nelderMead(valley, [-1.2, 1]));
  expect(parameters[0]).toBeCloseTo(1, 5);
  expect(parameters[1]).toBeCloseTo(1, 5);
});

test('a bound in the way is kept, and the best point on it is found', () => {
  const { parameters } = must(nelderMead(valley, [-1.2, 1], { high: [0.5, 9] }));
  expect(parameters[0]).toBeLessThanOrEqual(0.5);
  expect(parameters[0]).toBeCloseTo(0.5, 5);
  expect(parameters[1]).toBeCloseTo(0.25, 5);
});

test('a tilted bowl in a box has its minimum where arithmetic says', () => {
  const bowls = fc.record({
    centre: fc.array(
      fc.integer({ min: -200, max: 200 }).map((n) => n / 100),
      { minLength: 1, maxLength: 4 },
    ),
    stretch: fc.integer({ min: 1, max: 30 }),
  });
  fc.assert(
    fc.property(bowls, ({ centre, stretch }) => {
      const bowl = (p: Field) => centre.reduce((sum, c, i) => sum + (1 + stretch * i) * (p[i] - c) ** 2, 0);
      const box = { low: centre.map(() => -1), high: centre.map(() => 1) };
      const { parameters } = must(
        nelderMead(
          bowl,
          centre.map(() => 0.3),
          { ...box, size: centre.map(() => 0.2) },
        ),
      );
      centre.forEach((c, i) => {
        expect(parameters[i]).toBeCloseTo(Math.max(-1, Math.min(1, c)), 4);
      });
    }),
    { numRuns: 40 },
  );
});

test('a minimum beside a single bound, or on it, is found too', () => {
  const bowl = (p: Field) => (p[0] - 0.97) ** 2 + (p[1] + 2) ** 2;
  const above = must(nelderMead(bowl, [3, 0], { low: [-1, -1] })).parameters;
  expect(above[0]).toBeCloseTo(0.97, 4);
  expect(above[1]).toBeCloseTo(-1, 5);
  const below = must(nelderMead(bowl, [-3, -9], { high: [1, -2.5] })).parameters;
  expect(below[0]).toBeCloseTo(0.97, 4);
  expect(below[1]).toBeCloseTo(-2.5, 5);
});

test('the same search twice takes the same steps', () => {
  expect(nelderMead(valley, [3, -2])).toEqual(nelderMead(valley, [3, -2]));
});

test('holes where the function is not a number are walked around', () => {
  const walled = (p: Field) => (p[0] < 0 ? Number.NaN : (p[0] - 0.01) ** 2);
  expect(must(nelderMead(walled, [2])).parameters[0]).toBeCloseTo(0.01, 5);
  expect(nelderMead(() => Number.NaN, [1, 2]).ok).toBe(false);
});

test('a search that runs out of evaluations is no answer', () => {
  const short = nelderMead(valley, [-1.2, 1], { maxEvaluations: 20 });
  expect(short.ok ? 0 : short.failure.residual).toBeGreaterThan(1e-6);
});
