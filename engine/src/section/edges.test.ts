import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  centre,
  edgeBetween,
  edgeLength,
  nearestShare,
  partOf,
  pointAt,
  radius,
  tangentAt,
  turning,
} from './edges.ts';

const coordinate = fc.double({ min: -0.2, max: 0.2, noNaN: true });
const bulge = fc.double({ min: -1.5, max: 1.5, noNaN: true });
const edge = fc
  .record({ x: coordinate, y: coordinate, bulge, toX: coordinate, toY: coordinate })
  .filter(({ x, y, toX, toY }) => Math.hypot(toX - x, toY - y) > 1e-3)
  .map(({ x, y, bulge: b, toX, toY }) => edgeBetween({ x, y, bulge: b }, { x: toX, y: toY }));
const share = fc.double({ min: 0, max: 1, noNaN: true });

test('every point of an arc stands at its radius from the centre', () => {
  fc.assert(
    fc.property(edge, share, (arc, at) => {
      fc.pre(Math.abs(arc.bulge) > 1e-3);
      const [point, middle] = [pointAt(arc, at), centre(arc)];
      expect(Math.hypot(point.x - middle.x, point.y - middle.y) / radius(arc)).toBeCloseTo(1, 11);
    }),
  );
});

test('the tangent is the direction in which the point moves', () => {
  fc.assert(
    fc.property(edge, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (arc, at) => {
      const [before, after, tangent] = [pointAt(arc, at - 1e-5), pointAt(arc, at + 1e-5), tangentAt(arc, at)];
      const step = Math.hypot(after.x - before.x, after.y - before.y);
      // Central difference of a circle: third order in 1e-5 of the turning, plus round-off over the step.
      expect((after.x - before.x) / step - tangent.x).toBeCloseTo(0, 5);
      expect((after.y - before.y) / step - tangent.y).toBeCloseTo(0, 5);
    }),
  );
});

test('the nearest point of an edge to one of its own points is that point', () => {
  fc.assert(
    fc.property(edge, share, (arc, at) => {
      const { x, y } = pointAt(arc, at);
      const found = pointAt(arc, nearestShare(arc, x, y));
      expect(Math.hypot(found.x - x, found.y - y)).toBeLessThan(1e-12);
    }),
  );
});

test('no sampled point of an edge is nearer than the nearest', () => {
  fc.assert(
    fc.property(edge, coordinate, coordinate, (arc, x, y) => {
      const found = pointAt(arc, nearestShare(arc, x, y));
      const least = Math.hypot(found.x - x, found.y - y);
      for (let k = 0; k <= 40; k++) {
        const sample = pointAt(arc, k / 40);
        expect(Math.hypot(sample.x - x, sample.y - y)).toBeGreaterThan(least - 1e-12);
      }
    }),
  );
});

test('parts of an edge add up to its length and keep its radius', () => {
  fc.assert(
    fc.property(edge, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (arc, at) => {
      const first = edgeBetween(partOf(arc, 0, at), pointAt(arc, at));
      const second = edgeBetween(partOf(arc, at, 1), pointAt(arc, 1));
      expect((edgeLength(first) + edgeLength(second)) / edgeLength(arc)).toBeCloseTo(1, 9);
      expect(turning(first) + turning(second)).toBeCloseTo(turning(arc), 9);
    }),
  );
});

test('an arc of vanishing bulge is the straight line', () => {
  const line = edgeBetween({ x: 0.01, y: 0.02, bulge: 0 }, { x: 0.05, y: -0.03 });
  for (const tiny of [1e-9, 1e-11, 1e-15, 5e-324]) {
    const arc = edgeBetween({ x: 0.01, y: 0.02, bulge: tiny }, { x: 0.05, y: -0.03 });
    expect(pointAt(arc, 0.3).x).toBeCloseTo(pointAt(line, 0.3).x, 10);
    expect(pointAt(arc, 0.3).y).toBeCloseTo(pointAt(line, 0.3).y, 10);
    expect(edgeLength(arc)).toBeCloseTo(edgeLength(line), 14);
    expect(nearestShare(arc, 0.03, 0.03)).toBeCloseTo(nearestShare(line, 0.03, 0.03), 7);
  }
});

test('a bulge of one is a half circle that bellies out to the right of its chord', () => {
  const half = edgeBetween({ x: 1, y: 0, bulge: 1 }, { x: -1, y: 0 });
  expect(pointAt(half, 0.5).y).toBeCloseTo(1, 15);
  expect(edgeLength(half)).toBeCloseTo(Math.PI, 15);
});
