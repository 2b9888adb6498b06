import { expect, test } from 'vitest';
import { edgesOf, nearestOn } from '../../../section/edges.ts';
import { withChords } from '../../../section/flatten.ts';
import type { Outline } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { circle, rectangle } from '../../../section/rectangle.ts';
import { symmetryLines } from '../../../section/symmetry.ts';
import { lyingRail } from './mesh-laws.fixture.ts';
import { smoothOutline } from './smooth-outline.ts';

const size = 0.01;
const smoothing = { within: 1e-4, size };
const farthest = (from: Outline, to: Outline): number => {
  const edges = edgesOf(to);
  return Math.max(...from.vertices.map(({ x, y }) => nearestOn(edges, x, y).distance));
};

test('a circle of chords becomes a few arcs: the circle that its joints stand on', () => {
  const chords = withChords(circle(0.04), 4e-5);
  const smooth = smoothOutline(chords, {}, smoothing);
  expect(chords.vertices.length).toBeGreaterThan(60);
  expect(smooth.vertices.length).toBeLessThanOrEqual(8);
  expect(sectionProperties(smooth).area / (Math.PI * 0.04 ** 2)).toBeCloseTo(1, 12);
});

test('a rail of chords: far fewer edges, joints left by a hundredth of the size, the rail itself by three at most', () => {
  const rail = lyingRail('60E1');
  for (const sagitta of [2e-5, 2e-4]) {
    const chords = withChords(rail, sagitta);
    const smooth = smoothOutline(chords, {}, smoothing);
    expect(smooth.vertices.length).toBeLessThan(0.8 * chords.vertices.length);
    expect(farthest(chords, smooth)).toBeLessThanOrEqual(smoothing.within);
    expect(farthest(withChords(smooth, 1e-6), rail)).toBeLessThanOrEqual(0.03 * size);
  }
});

test('what is made of lines, arcs and sharp corners stays as it is', () => {
  for (const outline of [lyingRail('60E1'), rectangle(0.1, 0.06, 0), rectangle(0.1, 0.06, 0.004)]) {
    const smooth = smoothOutline(outline, {}, smoothing);
    expect(farthest(outline, smooth)).toBeLessThan(1e-12);
    expect(farthest(smooth, outline)).toBeLessThan(1e-12);
  }
});

test('joints in the middle of a straight side go, whichever way they are a micrometre off', () => {
  const [right, top, left, bottom] = [1, 0, -1, 0].map((_, side) =>
    Array.from({ length: 10 }, (_, i) => ({
      share: i / 10,
      off: i === 0 ? 0 : 1e-6 * Math.sin(7 * i + side),
    })),
  );
  const vertices = [
    ...bottom.map(({ share, off }) => ({ x: 0.1 * share, y: off, bulge: 0 })),
    ...right.map(({ share, off }) => ({ x: 0.1 + off, y: 0.06 * share, bulge: 0 })),
    ...top.map(({ share, off }) => ({ x: 0.1 - 0.1 * share, y: 0.06 + off, bulge: 0 })),
    ...left.map(({ share, off }) => ({ x: off, y: 0.06 - 0.06 * share, bulge: 0 })),
  ];
  const smooth = smoothOutline({ vertices }, {}, smoothing);
  expect(smooth.vertices).toHaveLength(4);
  expect(farthest({ vertices }, smooth)).toBeLessThan(3e-6);
});

test('a bump of three times the tolerance stays', () => {
  const base = [0, 8, 16, 24, 32, 40].map((x) => ({ x: x / 1e3, y: x === 16 ? -3e-4 : 0, bulge: 0 }));
  const bumped = { vertices: [...base, { x: 0.04, y: 0.03, bulge: 0 }, { x: 0, y: 0.03, bulge: 0 }] };
  expect(farthest(bumped, smoothOutline(bumped, {}, smoothing))).toBeLessThanOrEqual(smoothing.within);
});

test('a section that is its own mirror image stays one, in as many lines', () => {
  for (const section of [lyingRail('60E1'), rectangle(0.28, 0.38, 0.03), circle(0.05)]) {
    const chords = withChords(section, 1e-4);
    expect(symmetryLines(smoothOutline(chords, {}, smoothing))).toHaveLength(symmetryLines(chords).length);
  }
});
