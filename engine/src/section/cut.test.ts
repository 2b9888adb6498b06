import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { contains } from './contains.ts';
import { chordsAt, heightAt, thicknessProfile, widthAt } from './crossings.ts';
import { cutAt, partsAbove } from './cut.ts';
import { edgesOf, nearestOn, pointAt } from './edges.ts';
import { flattened } from './flatten.ts';
import type { Outline } from './outline.ts';
import { outlineOf, profileNamed } from './profile-library.ts';
import { sectionProperties } from './properties.ts';
import { circle } from './rectangle.ts';
import { moved, turned } from './transform.ts';

const profile = profileNamed('60E1');
if (!profile) throw new Error('60E1 is missing');
const rail = must(outlineOf(profile));
const lying = turned(rail, -Math.PI / 2);
const area = (parts: readonly Outline[]) =>
  parts.reduce((sum, part) => sum + sectionProperties(part).area, 0);

/** A trough: two arms on a base. */
const trough: Outline = {
  vertices: [
    [0, 0],
    [3, 0],
    [3, 3],
    [2, 3],
    [2, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ].map(([x, y]) => ({ x: x / 10, y: y / 10, bulge: 0 })),
};

test('both sides of any cut through a rail add up to the rail', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -0.02, max: 0.2, noNaN: true }),
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      (at, angle) => {
        const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
        const [up, down] = [
          partsAbove(rail, { nx, ny, at }),
          partsAbove(rail, { nx: -nx, ny: -ny, at: -at }),
        ];
        expect(area([...up, ...down]) / sectionProperties(rail).area).toBeCloseTo(1, 12);
      },
    ),
    { numRuns: 300 },
  );
});

test('a cut keeps arcs on their circles', () => {
  const [upper] = cutAt(circle(0.05), 'y', 0.02).above;
  const angle = 2 * Math.acos(0.4);
  expect(sectionProperties(upper).area / ((0.05 ** 2 / 2) * (angle - Math.sin(angle)))).toBeCloseTo(1, 13);
  for (const edge of edgesOf(upper)) {
    if (edge.bulge === 0) continue;
    const { x, y } = pointAt(edge, 0.37);
    expect(Math.hypot(x, y)).toBeCloseTo(0.05, 15);
  }
});

test('a rail cut on its axis gives two halves whose cut lies on the axis to the last digit', () => {
  const { below, above } = cutAt(rail, 'x', 0);
  expect(below).toHaveLength(1);
  expect(above[0].vertices.filter(({ x }) => x === 0)).toHaveLength(2);
  expect(area(above) / area(below)).toBeCloseTo(1, 13);
  expect(cutAt(lying, 'y', 0).above[0].vertices.filter(({ y }) => y === 0)).toHaveLength(2);
});

test('a cut through two arms gives two parts, also along the bottom of the trough', () => {
  expect(cutAt(trough, 'y', 0.2).above).toHaveLength(2);
  expect(cutAt(trough, 'y', 0.1).above).toHaveLength(2);
  expect(cutAt(trough, 'y', 0.1).below).toHaveLength(1);
  expect(area(cutAt(trough, 'y', 0.1).below)).toBeCloseTo(0.03, 14);
});

test('a cut through the tip of a notch keeps the areas; the upper part stays one outline that touches itself there', () => {
  const notched = {
    vertices: [
      [0, -1],
      [4, -1],
      [4, 1],
      [2, 0],
      [0, 1],
    ].map(([x, y]) => ({ x, y, bulge: 0 })),
  };
  const { below, above } = cutAt(notched, 'y', 0);
  expect(above).toHaveLength(1);
  expect(area(above)).toBe(2);
  expect(area(below)).toBe(4);
});

test('a cut that misses the section leaves it whole on one side', () => {
  expect(cutAt(rail, 'y', -0.001)).toEqual({ below: [], above: [rail] });
  expect(cutAt(rail, 'y', 0).below).toEqual([]);
  expect(area(cutAt(rail, 'y', 0.2).above)).toBe(0);
});

test('the width of a circle at a height is its chord', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.0499, max: 0.0499, noNaN: true }), (y) => {
      expect(widthAt(moved(circle(0.05), 0.2, 0), y)).toBeCloseTo(2 * Math.sqrt(0.0025 - y * y), 12);
      expect(heightAt(moved(circle(0.05), 0.2, 0), 0.2 + y)).toBeCloseTo(2 * Math.sqrt(0.0025 - y * y), 12);
    }),
  );
});

test('a rail has its web thickness at the middle of the web, its foot width at the toe and its height on the axis', () => {
  expect(widthAt(rail, 0.076)).toBeCloseTo(0.0165, 14);
  expect(widthAt(rail, 0.005)).toBeCloseTo(0.15, 14);
  expect(heightAt(rail, 0)).toBeCloseTo(0.172, 14);
  // Head width 72 mm at the tangent point 14.3 mm below the top; on the R13 arc 0.3 mm higher, at the gauge line, less.
  expect(widthAt(rail, 0.172 - 0.0143)).toBeCloseTo(0.072, 5);
  expect(widthAt(rail, 0.172 - 0.014)).toBeCloseTo(2 * (0.036 - 0.0003 / 20 - 0.0003 ** 2 / 0.026), 6);
});

test('the widths over the whole height add up to the area', () => {
  const rows = Float64Array.from({ length: 20000 }, (_, i) => ((i + 0.5) / 20000) * 0.172);
  const sum = thicknessProfile(rail, rows).reduce((total, width) => total + width, 0) * (0.172 / 20000);
  // Midpoint rule with the square-root ends of the crown: the error falls with the 1.5th power of the step.
  expect(sum / sectionProperties(rail).area).toBeCloseTo(1, 5);
});

test('a line through two arms meets material twice', () => {
  expect(chordsAt(trough, 'y', 0.2)).toEqual([
    [0, 0.1],
    [0.2, 0.3],
  ]);
});

test('inside and outside agree with a fine polygon', () => {
  const corners = flattened(rail, 1e-8);
  const inPolygon = (x: number, y: number) => {
    let inside = false;
    for (let i = 0, j = corners.length - 2; i < corners.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [corners[j], corners[j + 1], corners[i], corners[i + 1]];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    }
    return inside;
  };
  const edges = edgesOf(rail);
  fc.assert(
    fc.property(
      fc.double({ min: -0.08, max: 0.08, noNaN: true }),
      fc.double({ min: -0.01, max: 0.18, noNaN: true }),
      (x, y) => {
        fc.pre(nearestOn(edges, x, y).distance > 1e-7);
        expect(contains(rail, x, y)).toBe(inPolygon(x, y));
      },
    ),
    { numRuns: 500 },
  );
});

test('the middle of a circle drawn as two halves is inside', () => {
  expect(contains(circle(1), 0, 0)).toBe(true);
  expect(contains(turned(circle(1), Math.PI / 2), 0, 0)).toBe(true);
});

test('a point on the chord of a full arc is inside, on that of a hollow one outside', () => {
  const boxOn = (bulge: number) => ({
    vertices: [
      [-1, 0, bulge],
      [1, 0, 0],
      [1, 2, 0],
      [-1, 2, 0],
    ].map(([x, y, b]) => ({ x, y, bulge: b })),
  });
  for (const angle of [0, Math.PI / 2, Math.PI, -Math.PI / 2]) {
    expect(contains(turned(boxOn(1), angle), 0, 0)).toBe(true);
    expect(contains(turned(boxOn(-1), angle), 0, 0)).toBe(false);
  }
});
