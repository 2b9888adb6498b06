import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { bracketedRoot } from './roots.ts';

// Hard functions with a root in the bracket: after Alefeld, Potra, Shi, ACM TOMS 21 (1995) 327, from memory.
const hard: [string, (x: number) => number, number, number, number][] = [
  ['gentle', (x) => x * x - 2, 0, 2, Math.SQRT2],
  ['flat: ninth power', (x) => (x - 1) ** 9, 0, 3, 1],
  ['steep: exponential', (x) => Math.exp(50 * x) - 1e-3, -1, 1, Math.log(1e-3) / 50],
  ['a step', (x) => (x < 0.3 ? -1 : 1e6), 0, 1, 0.3],
  ['a pole inside', (x) => 1 / (x - 0.3), 0, 1, 0.3],
  ['nearly double', (x) => (x - 0.5) * ((x - 0.5) ** 2 + 1e-12), 0, 1.1, 0.5],
  ['far away', (x) => Math.atan(x - 1e6), -1e9, 1e10, 1e6],
  ['a cube root', (x) => Math.cbrt(x - 0.123), -1, 7, 0.123],
];

test.each(hard)('a root is found on %s, in fewer than 100 steps', (_, f, low, high, exact) => {
  for (const result of [bracketedRoot(f, low, high), bracketedRoot(f, high, low)]) {
    const { root, residual, iterations } = must(result);
    // Four units in the last place of the wider end, and the rounding of the constants above.
    expect(Math.abs(root - exact)).toBeLessThanOrEqual(8 * Number.EPSILON * Math.max(1, Math.abs(exact)));
    expect(residual).toBe(f(root));
    expect(iterations).toBeLessThan(100);
  }
});

test('a smooth root costs about as many evaluations as it has digits, not bits', () => {
  expect(must(bracketedRoot((x) => Math.cos(x) - x, 0, 1)).iterations).toBeLessThan(12);
});

test('the answer is as near as was asked for', () => {
  const cubic = fc.record({
    root: fc.integer({ min: -900, max: 900 }).map((n) => n / 1000),
    tolerance: fc.constantFrom(1e-3, 1e-7),
  });
  fc.assert(
    fc.property(cubic, ({ root, tolerance }) => {
      const f = (x: number) => (x - root) * (1 + (x - root) ** 2);
      expect(Math.abs(must(bracketedRoot(f, -1, 1, { tolerance })).root - root)).toBeLessThanOrEqual(
        tolerance,
      );
    }),
  );
});

test('an end that is a root is the root', () => {
  expect(must(bracketedRoot((x) => x, 0, 1))).toEqual({ root: 0, residual: 0, iterations: 0 });
  expect(must(bracketedRoot((x) => x - 1, 0, 1))).toEqual({ root: 1, residual: 0, iterations: 0 });
});

test('without a change of sign there is no answer, and the reason says between which values', () => {
  const none = bracketedRoot((x) => x * x + 1, -1, 2);
  expect(none.ok ? '' : none.failure.reason).toBe('no change of sign between f(-1) = 2 and f(2) = 5');
  expect(bracketedRoot(() => Number.NaN, 0, 1).ok).toBe(false);
  expect(bracketedRoot((x) => (x > 0.1 && x < 0.9 ? Number.NaN : x - 0.5), 0, 1).ok).toBe(false);
});

test('a search that is cut short is no answer', () => {
  const short = bracketedRoot((x) => x ** 3 - 2, 0, 10, { maxIterations: 3 });
  expect(short.ok ? undefined : short.failure.iterations).toBe(3);
  expect(short.ok ? 0 : short.failure.residual).toBeGreaterThan(0);
});
