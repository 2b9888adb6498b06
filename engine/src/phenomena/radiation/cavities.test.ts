import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import type { Outline } from '../../section/outline.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { rectangle } from '../../section/rectangle.ts';
import { mirrored } from '../../section/transform.ts';
import { triangulate } from '../../section/triangulate.ts';
import { skinOf } from '../conduction/surface.ts';
import { openEmissivity } from './cavities.ts';
import { radiosity } from './radiosity.ts';
import { viewFactors } from './view-factors.ts';

const mesh = (outline: Outline, size: number) => must(triangulate(outline, { size }));
const polygon = (...points: [number, number][]): Outline => ({
  vertices: points.map(([x, y]) => ({ x, y, bulge: 0 })),
});
const rail = profileNamed('60E1');
if (!rail) throw new Error('no 60E1');
const railMesh = mesh(must(outlineOf(rail)), 0.01);

test('a bloom has no hollow: every edge radiates with its own emissivity', () => {
  for (const each of openEmissivity(mesh(rectangle(0.28, 0.38, 0.02), 0.03), 0.8))
    expect(each).toBeCloseTo(0.8, 9);
});

test('a black slot three times as deep as wide radiates through its mouth, a seventh of its surface', () => {
  const block = polygon(
    [0, 0],
    [0.3, 0],
    [0.3, 0.4],
    [0.2, 0.4],
    [0.2, 0.1],
    [0.1, 0.1],
    [0.1, 0.4],
    [0, 0.4],
  );
  const effective = openEmissivity(mesh(block, 0.05), 1);
  expect(Math.min(...effective)).toBeCloseTo(1 / 7, 9);
  expect(Math.max(...effective)).toBeCloseTo(1, 9);
});

test('a whole rail of one temperature gives off what the radiosity of its own view factors says, within 2 %', () => {
  const skin = skinOf(railMesh);
  const ends = 2 * skin.edges;
  const [hot, flux, slope] = [
    new Float64Array(ends).fill(900),
    new Float64Array(ends),
    new Float64Array(ends),
  ];
  const far = viewFactors(railMesh);
  radiosity(far, { emissivity: 0.8, ambient: 25 }).heat(hot, 0, flux, slope);
  const total = (of: (e: number) => number) =>
    Array.from(skin.length, (length, e) => length * of(e)).reduce((a, b) => a + b, 0);
  const exact = -total((e) => (flux[2 * e] + flux[2 * e + 1]) / 2);
  const black = 5.670374419e-8 * (1173.15 ** 4 - 298.15 ** 4);
  const effective = openEmissivity(railMesh, 0.8);
  expect(Math.abs((black * total((e) => effective[e])) / exact - 1)).toBeLessThan(0.02);
});

test('a mirrored rail radiates alike', () => {
  const outline = must(outlineOf(rail));
  const sum = (of: Outline) => openEmissivity(mesh(of, 0.01), 0.8).reduce((a, b) => a + b, 0);
  expect(sum(mirrored(outline))).toBeCloseTo(sum(outline), 6);
});
