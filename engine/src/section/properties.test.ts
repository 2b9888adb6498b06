import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gaussLegendre, integrate } from '../numerics/quadrature.ts';
import { segmentMoments } from './circular-segment.ts';
import { withChords } from './flatten.ts';
import type { Outline } from './outline.ts';
import { principalMoments, sectionModuli, sectionProperties } from './properties.ts';
import { circle, rectangle } from './rectangle.ts';
import { mirrored, moved, scaled, turned } from './transform.ts';

/** An outline without any symmetry: lines, hollow and full arcs, one of them nearly straight. */
const odd: Outline = {
  vertices: [
    { x: -0.05, y: -0.02, bulge: -0.1 },
    { x: 0.06, y: -0.04, bulge: 0.4 },
    { x: 0.08, y: 0.05, bulge: 0 },
    { x: 0.01, y: 0.03, bulge: -0.2 },
    { x: -0.04, y: 0.07, bulge: 1e-4 },
  ],
};

test('a circle has its closed-form area, moments and perimeter', () => {
  const { area, ix, iy, ixy, perimeter, bounds } = sectionProperties(moved(circle(0.05), 0.3, -0.2));
  expect(area / (Math.PI * 0.05 ** 2)).toBeCloseTo(1, 14);
  expect(ix / ((Math.PI * 0.05 ** 4) / 4)).toBeCloseTo(1, 13);
  expect(iy / ((Math.PI * 0.05 ** 4) / 4)).toBeCloseTo(1, 13);
  expect(ixy / ix).toBeCloseTo(0, 13);
  expect(perimeter / (Math.PI * 0.1)).toBeCloseTo(1, 14);
  expect(bounds.left).toBeCloseTo(0.25, 15);
  expect(bounds.top).toBeCloseTo(-0.15, 15);
});

test('a rounded rectangle has its closed-form area, second moment and perimeter', () => {
  const [b, h, r] = [0.3, 0.38, 0.03];
  const { area, ix, perimeter } = sectionProperties(rectangle(b, h, r));
  expect(area / (b * h - (4 - Math.PI) * r * r)).toBeCloseTo(1, 14);
  expect(perimeter / (2 * (b + h) - (8 - 2 * Math.PI) * r)).toBeCloseTo(1, 14);
  // What a corner lacks: its square less the quarter circle, seen from the middle of that circle.
  const [missing, lever] = [(1 - Math.PI / 4) * r * r, r / (6 * (1 - Math.PI / 4))];
  const own = (1 / 3 - Math.PI / 16) * r ** 4 - missing * lever ** 2;
  const closed = (b * h ** 3) / 12 - 4 * (own + missing * (h / 2 - r + lever) ** 2);
  expect(ix / closed).toBeCloseTo(1, 12);
});

test('a polygon of fine chords comes to the same properties', () => {
  const [exact, fine] = [sectionProperties(odd), sectionProperties(withChords(odd, 1e-10))];
  for (const key of ['area', 'ix', 'iy', 'ixy', 'perimeter'] as const)
    expect(fine[key] / exact[key]).toBeCloseTo(1, 6);
  expect(fine.centroid.x).toBeCloseTo(exact.centroid.x, 9);
  expect(fine.centroid.y).toBeCloseTo(exact.centroid.y, 9);
});

test('a circular segment has the moments that quadrature over its height gives', () => {
  const rule = gaussLegendre(100);
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1, noNaN: true }), (bulge) => {
      // Height over the chord, half chord 1: s(u) = √(r² − u²) − c, written without cancellation.
      const c = (1 - bulge * bulge) / (2 * bulge);
      const s = (u: number) => (1 - u * u) / (Math.sqrt(c * c + 1 - u * u) + c);
      const over = (f: (u: number) => number) =>
        integrate((t) => f(Math.sin(t)) * Math.cos(t), -Math.PI / 2, Math.PI / 2, rule);
      const { area, w, ww, uu } = segmentMoments(1, bulge);
      expect(area / over(s)).toBeCloseTo(1, 11);
      expect(w / over((u) => s(u) ** 2 / 2)).toBeCloseTo(1, 11);
      expect(ww / over((u) => s(u) ** 3 / 3)).toBeCloseTo(1, 10);
      expect(uu / over((u) => u * u * s(u))).toBeCloseTo(1, 11);
    }),
  );
});

test('a hollow segment counts as the full one taken away', () => {
  const [full, hollow] = [segmentMoments(0.01, 0.3), segmentMoments(0.01, -0.3)];
  expect(hollow.area).toBe(-full.area);
  expect(hollow.w).toBe(full.w);
  expect(hollow.ww).toBe(-full.ww);
});

test('a mirrored section has the same moments and the opposite product of inertia', () => {
  const [from, to] = [sectionProperties(odd), sectionProperties(mirrored(odd))];
  expect(to.area / from.area).toBeCloseTo(1, 13);
  expect(to.ix / from.ix).toBeCloseTo(1, 13);
  expect(to.iy / from.iy).toBeCloseTo(1, 13);
  expect(to.ixy / from.ixy).toBeCloseTo(-1, 12);
  expect(to.centroid.x).toBeCloseTo(-from.centroid.x, 14);
});

test('a section scaled by s has s² the area and s⁴ the second moments', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (s) => {
      const [from, to] = [sectionProperties(odd), sectionProperties(scaled(odd, s))];
      expect(to.area / from.area / s ** 2).toBeCloseTo(1, 12);
      expect(to.ix / from.ix / s ** 4).toBeCloseTo(1, 12);
      expect(to.ixy / from.ixy / s ** 4).toBeCloseTo(1, 11);
    }),
  );
});

test('a turned and moved section keeps its principal moments', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (angle, dx) => {
        const [from, to] = [odd, moved(turned(odd, angle), dx, -dx)].map((o) =>
          principalMoments(sectionProperties(o)),
        );
        expect(to.strong / from.strong).toBeCloseTo(1, 11);
        expect(to.weak / from.weak).toBeCloseTo(1, 11);
        const ahead = Math.sin(to.angle - from.angle - angle);
        expect(ahead).toBeCloseTo(0, 9);
      },
    ),
  );
});

test('section moduli of a rectangle are b h² / 6 and h b² / 6', () => {
  const { top, bottom, lateral } = sectionModuli(sectionProperties(rectangle(0.1, 0.2, 0)));
  expect(top / ((0.1 * 0.2 ** 2) / 6)).toBeCloseTo(1, 13);
  expect(bottom).toBeCloseTo(top, 16);
  expect(lateral / ((0.2 * 0.1 ** 2) / 6)).toBeCloseTo(1, 13);
});
