import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { contains } from './contains.ts';
import { edgesOf, nearestOn } from './edges.ts';
import { triangleArea, triangleCount } from './mesh.ts';
import type { Outline } from './outline.ts';
import { sectionProperties } from './properties.ts';
import { mirrored, mirroredMesh, moved, movedMesh, scaledMesh, turned, turnedMesh } from './transform.ts';
import { triangulate } from './triangulate.ts';

const wedge: Outline = {
  vertices: [
    { x: 0.01, y: 0.002, bulge: 0 },
    { x: 0.11, y: 0.01, bulge: 0.3 },
    { x: 0.08, y: 0.09, bulge: -0.2 },
  ],
};
const mesh = must(triangulate(wedge, { size: 0.02 }));

test('four quarter turns bring every vertex back to the last digit', () => {
  let outline = wedge;
  for (let k = 0; k < 4; k++) outline = turned(outline, Math.PI / 2);
  expect(outline).toEqual(wedge);
});

test('a point inside is inside after every move of outline and point', () => {
  expect(contains(wedge, 0.07, 0.03)).toBe(true);
  expect(contains(mirrored(wedge), -0.07, 0.03)).toBe(true);
  expect(contains(mirrored(wedge, 'y', 0.1), 0.07, 0.17)).toBe(true);
  expect(contains(turned(wedge, Math.PI / 2), -0.03, 0.07)).toBe(true);
  expect(contains(moved(wedge, 1, 2), 1.07, 2.03)).toBe(true);
});

test('mirroring twice gives the outline back', () => {
  expect(mirrored(mirrored(wedge))).toEqual(wedge);
});

test('a moved, turned, scaled or mirrored mesh keeps its triangles upright and its boundary on the same edges', () => {
  const cases = [
    { outline: moved(wedge, 0.1, -0.2), moved: movedMesh(mesh, 0.1, -0.2) },
    { outline: turned(wedge, 0.7), moved: turnedMesh(mesh, 0.7) },
    { outline: mirrored(wedge, 'x', 0.05), moved: mirroredMesh(mesh, 3, 'x', 0.05) },
    { outline: mirrored(wedge, 'y'), moved: mirroredMesh(mesh, 3, 'y') },
  ];
  for (const { outline, moved: image } of cases) {
    for (let t = 0; t < triangleCount(image); t++) expect(triangleArea(image, t)).toBeGreaterThan(0);
    const edges = edgesOf(outline);
    for (let i = 0; i < image.boundaryEdgeOf.length; i++) {
      const [a, b] = [2 * image.boundary[2 * i], 2 * image.boundary[2 * i + 1]];
      const [x, y] = [(image.xy[a] + image.xy[b]) / 2, (image.xy[a + 1] + image.xy[b + 1]) / 2];
      expect(nearestOn(edges, x, y).edge).toBe(image.boundaryEdgeOf[i]);
    }
  }
});

test('a mesh scaled by the hot factor has its square of the area', () => {
  const total = (m: typeof mesh) =>
    Array.from({ length: triangleCount(m) }, (_, t) => triangleArea(m, t)).reduce((s, a) => s + a);
  expect(total(scaledMesh(mesh, 1.013)) / total(mesh)).toBeCloseTo(1.013 ** 2, 13);
  expect(total(mesh) / sectionProperties(wedge).area).toBeCloseTo(1, 1);
});
