import { expect, test } from 'vitest';
import { gaussLegendre, integrate, simpson } from './quadrature.ts';

test.each([1, 2, 3, 5, 8, 20, 64, 100])(
  '%i Gauss points integrate every polynomial they promise',
  (count) => {
    const rule = gaussLegendre(count);
    for (let degree = 0; degree <= 2 * count - 1; degree++) {
      const exact = degree % 2 === 0 ? 2 / (degree + 1) : 0;
      expect(Math.abs(integrate((x) => x ** degree, -1, 1, rule) - exact)).toBeLessThan(2e-14);
    }
    const beyond = Math.abs(integrate((x) => x ** (2 * count), -1, 1, rule) - 2 / (2 * count + 1));
    if (count <= 8) expect(beyond).toBeGreaterThan(1e-6);
  },
);

test('points of a rule ascend, and lie as the tables say', () => {
  const { points, weights } = gaussLegendre(3);
  // Abramowitz, Stegun, Table 25.4: ±√0.6 and 0, weights 5/9 and 8/9.
  [-Math.sqrt(0.6), 0, Math.sqrt(0.6)].forEach((x, i) => {
    expect(points[i]).toBeCloseTo(x, 15);
  });
  [5 / 9, 8 / 9, 5 / 9].forEach((w, i) => {
    expect(weights[i]).toBeCloseTo(w, 15);
  });
});

test("Simpson's rule is exact for cubics and of fourth order beyond", () => {
  expect(simpson((x) => x ** 3 - x, 1, 3, 1)).toBeCloseTo(16, 13);
  const miss = (pieces: number) => Math.abs(simpson(Math.exp, 0, 1, pieces) - (Math.E - 1));
  expect(Math.log2(miss(8) / miss(16))).toBeCloseTo(4, 1);
});

test('swapping the limits changes the sign', () => {
  expect(integrate(Math.exp, 2, 0, gaussLegendre(9))).toBeCloseTo(1 - Math.exp(2), 12);
  expect(simpson((x) => x, 2, 0, 4)).toBeCloseTo(-2, 14);
});
