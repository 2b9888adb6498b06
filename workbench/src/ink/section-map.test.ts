import { expect, test } from 'vitest';
import { bands, isolineStep, isolines } from './section-map.ts';

/** A square of two triangles whose field rises from 0 at the left to 100 at the right. */
const square = {
  x: [0, 1, 1, 0],
  y: [0, 0, 1, 1],
  triangles: [0, 1, 2, 0, 2, 3],
  values: [0, 100, 100, 0],
};
const place = { x: (m: number) => 100 * m, y: (m: number) => -100 * m };

const areaOf = (path: string): number =>
  path
    .split('M')
    .filter(Boolean)
    .reduce((total, ring) => {
      const points = ring
        .replace('Z', '')
        .split('L')
        .map((point) => point.split(' ').map(Number));
      const twice = points.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = points[(i + 1) % points.length];
        return sum + x * nextY - nextX * y;
      }, 0);
      return total + Math.abs(twice) / 2;
    }, 0);

test('the bands of a section cover it exactly and each has its share', () => {
  const paths = bands(square, 25, place);
  const areas = [0, 25, 50, 75].map((low) => areaOf(paths.get(low) ?? ''));
  for (const area of areas) expect(area).toBeCloseTo(2500, 0);
});

test('a line of equal value runs straight through a linear field', () => {
  const lines = isolines(square, 50, place);
  const xs = [...(lines.get(50) ?? '').matchAll(/[ML]([\d.]+)/g)].map(([, x]) => Number(x));
  expect(xs.length).toBe(4);
  for (const x of xs) expect(x).toBe(50);
});

test('lines are so many that a section can be read: 9 at most, steps from 5 to 100', () => {
  expect(isolineStep(1223, 1253)).toBe(5);
  expect(isolineStep(1134, 1243)).toBe(20);
  expect(isolineStep(354, 681)).toBe(50);
  expect(isolineStep(20, 1250)).toBe(100);
});
