import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { solveDense, solveDenseInPlace, solvePositiveDefinite } from './dense.ts';
import { seededRandom } from './random.ts';

const sizes = fc.record({ n: fc.integer({ min: 1, max: 60 }), seed: fc.integer() });

function productOf(matrix: ArrayLike<number>, x: ArrayLike<number>): Float64Array {
  const n = x.length;
  return Float64Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += matrix[i * n + j] * x[j];
    return sum;
  });
}

test('what was solved gives the right-hand side back, and the inputs are untouched', () => {
  fc.assert(
    fc.property(sizes, ({ n, seed }) => {
      const random = seededRandom(seed);
      const matrix = Float64Array.from({ length: n * n }, () => 2 * random() - 1);
      const kept = matrix.slice();
      const rhs = Float64Array.from({ length: n }, () => random());
      const x = must(solveDense(matrix, rhs));
      const size = x.reduce((most, value) => Math.max(most, Math.abs(value)), 1);
      // Partial pivoting: residual about n ε |A| |x|, growth of pivots rarely above 10.
      productOf(matrix, x).forEach((b, i) => {
        expect(Math.abs(b - rhs[i])).toBeLessThan(1e-12 * size);
      });
      expect(matrix).toEqual(kept);
      expect(solveDenseInPlace(matrix, rhs)).toEqual({ ok: true, value: x });
      expect(rhs).toEqual(x);
    }),
  );
});

test('a positive definite system is solved from its lower triangle alone', () => {
  fc.assert(
    fc.property(sizes, ({ n, seed }) => {
      const random = seededRandom(seed);
      const root = Float64Array.from({ length: n * n }, () => 2 * random() - 1);
      const matrix = new Float64Array(n * n);
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          for (let k = 0; k < n; k++) matrix[i * n + j] += root[i * n + k] * root[j * n + k];
        }
        matrix[i * n + i] += 1;
      }
      const lower = matrix.map((value, at) => (at % n > Math.floor(at / n) ? Number.NaN : value));
      const rhs = Float64Array.from({ length: n }, () => random());
      productOf(matrix, must(solvePositiveDefinite(lower, rhs))).forEach((b, i) => {
        expect(b).toBeCloseTo(rhs[i], 10);
      });
    }),
  );
});

test('a zero in the corner is pivoted around', () => {
  expect([...must(solveDense([0, 2, 1, 0], [4, 3]))]).toEqual([3, 2]);
});

test('a singular or indefinite matrix is refused, and the pivot named', () => {
  const refused = solveDense([1, 2, 2, 4], [1, 1]);
  expect(refused.ok ? '' : refused.failure.reason).toContain('pivot 1 of the matrix is 0');
  expect(solveDense([0], [1]).ok).toBe(false);
  expect(solveDense([Number.NaN], [1]).ok).toBe(false);
  expect(solvePositiveDefinite([1, 0, 2, 1], [1, 1]).ok).toBe(false);
  expect(solvePositiveDefinite([-1], [1]).ok).toBe(false);
  expect(solvePositiveDefinite([1, 1, 1, 1], [1, 1]).ok).toBe(false);
});
