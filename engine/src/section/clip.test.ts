import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { common, united, without } from './clip.ts';
import { edgeBetween } from './edges.ts';
import { exactOffset, offset } from './offset.ts';
import type { Outline } from './outline.ts';
import { outlineOf, profileNamed } from './profile-library.ts';
import { sectionProperties } from './properties.ts';
import { circle, rectangle } from './rectangle.ts';
import { meetings, selfCrossing } from './self-crossing.ts';
import { moved } from './transform.ts';

const profile = profileNamed('60E1');
if (!profile) throw new Error('60E1 is missing');
const rail = must(outlineOf(profile));
const area = (parts: readonly Outline[]) =>
  parts.reduce((sum, part) => sum + sectionProperties(part).area, 0);
const [a, b] = [circle(0.05), moved(circle(0.05), 0.06, 0)];

test('two circles share their lens', () => {
  const angle = 2 * Math.acos(0.6);
  // Chords within 2 µm of the arcs: area right to perimeter × sagitta.
  expect(area(must(common(a, b))) / (0.05 ** 2 * (angle - Math.sin(angle)))).toBeCloseTo(1, 3);
});

test('what two sections share and what they cover add up to both', () => {
  const [shared, covered] = [area(must(common(a, b))), area(must(united(a, b)))];
  expect((shared + covered) / (2 * sectionProperties(a).area)).toBeCloseTo(1, 3);
  expect((area(must(without(a, b))) + shared) / sectionProperties(a).area).toBeCloseTo(1, 3);
});

test('sections apart share nothing; a hole is refused', () => {
  expect(must(common(a, moved(a, 1, 0)))).toEqual([]);
  expect(must(united(a, moved(a, 1, 0)))).toHaveLength(2);
  expect(without(a, circle(0.01)).ok).toBe(false);
});

test('clipping a bloom to a half plane agrees with the area it should leave', () => {
  expect(area(must(common(rectangle(0.2, 0.2, 0), moved(rectangle(1, 1, 0), 0.53, 0))))).toBeCloseTo(
    0.07 * 0.2,
    9,
  );
});

test('an outline moved outwards by d grows by perimeter · d + π d², exactly (Steiner), when it has no hollow corner', () => {
  for (const outline of [rectangle(0.3, 0.38, 0.03), rectangle(0.3, 0.38, 0), circle(0.05), rail]) {
    const { area: own, perimeter } = sectionProperties(outline);
    const [grown] = must(offset(outline, 0.002));
    expect(sectionProperties(grown).area / (own + perimeter * 0.002 + Math.PI * 0.002 ** 2)).toBeCloseTo(
      1,
      12,
    );
  }
});

test('out and back again is the same section', () => {
  const back = exactOffset(exactOffset(rail, 0.001) ?? rail, -0.001);
  expect(back && sectionProperties(back).ix / sectionProperties(rail).ix).toBeCloseTo(1, 12);
});

test('where arcs shrink through their centre or corners close, chords take over', () => {
  const [shrunk] = must(offset(rectangle(0.3, 0.38, 0), -0.01));
  expect(sectionProperties(shrunk).area).toBeCloseTo(0.28 * 0.36, 9);
  expect(exactOffset(rail, -0.0025)).toBeUndefined();
  expect(exactOffset(rectangle(0.3, 0.38, 0), -0.01)).toBeUndefined();
  const [inner] = must(offset(rail, -0.0025));
  const { area: own, perimeter } = sectionProperties(rail);
  expect(sectionProperties(inner).area / (own - perimeter * 0.0025 + Math.PI * 0.0025 ** 2)).toBeCloseTo(
    1,
    3,
  );
  expect(must(offset(rail, -0.009)).length).toBe(2);
});

test('a section that crosses itself is found, wherever lines and arcs meet', () => {
  expect(selfCrossing(rail)).toBeUndefined();
  expect(selfCrossing(circle(1))).toBeUndefined();
  const shape = (...rows: readonly (readonly [number, number, number])[]): Outline => ({
    vertices: rows.map(([x, y, bulge]) => ({ x, y, bulge })),
  });
  const bow = selfCrossing(shape([0, 0, 0], [1, 1, 0], [1, 0, 0], [0, 1, 0]));
  expect(bow?.x).toBeCloseTo(0.5, 12);
  // The upper side sags as an arc through the lower one.
  expect(selfCrossing(shape([0, 0, 0], [2, 0, 0], [2, 0.5, -1], [0, 0.5, 0]))?.y).toBeCloseTo(0, 12);
  // Two arcs that bulge into each other.
  expect(selfCrossing(shape([0, 0, -0.8], [2, 0, 0], [2, 1, -0.8], [0, 1, 0]))).toBeDefined();
  expect(selfCrossing(shape([0, 0, -0.3], [2, 0, 0], [2, 1, -0.3], [0, 1, 0]))).toBeUndefined();
});

test('two arcs of R 50 and R 40, 60 apart, meet where their circles do', () => {
  const [right, left] = [
    edgeBetween({ x: 0, y: -0.05, bulge: 1 }, { x: 0, y: 0.05 }),
    edgeBetween({ x: 0.06, y: 0.04, bulge: 1 }, { x: 0.06, y: -0.04 }),
  ];
  const points = meetings(right, left, 1e-9).sort((p, q) => p.y - q.y);
  expect(points).toHaveLength(2);
  for (const { x } of points) expect(x).toBeCloseTo(0.0375, 14);
  expect(points[1].y).toBeCloseTo(Math.sqrt(0.05 ** 2 - 0.0375 ** 2), 14);
});
