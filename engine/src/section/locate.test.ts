import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { carriedOver, interpolated, locator } from './locate.ts';
import { outlineOf, profileNamed } from './profile-library.ts';
import { circle } from './rectangle.ts';
import { triangulate } from './triangulate.ts';

const coarse = must(triangulate(circle(0.05), { size: 0.008 }));
const fine = must(triangulate(circle(0.0495), { size: 0.003 }));
const plane = (mesh: typeof coarse) =>
  Float64Array.from(
    { length: mesh.xy.length / 2 },
    (_, i) => 900 + 3e3 * mesh.xy[2 * i] - 2e3 * mesh.xy[2 * i + 1],
  );

test('a plane field comes over to another mesh exactly wherever that lies inside', () => {
  const [values, exact, find] = [carriedOver(coarse, plane(coarse), fine), plane(fine), locator(coarse)];
  let inside = 0;
  for (let i = 0; i < values.length; i++) {
    if (find.triangleAt(fine.xy[2 * i], fine.xy[2 * i + 1]) < 0) continue;
    inside++;
    expect(values[i]).toBeCloseTo(exact[i], 9);
  }
  expect(inside).toBeGreaterThan(0.9 * values.length);
});

test('nothing that is carried over leaves the range of what it comes from', () => {
  const field = plane(coarse);
  const values = carriedOver(coarse, field, must(triangulate(circle(0.06), { size: 0.004 })));
  expect(Math.max(...values)).toBeLessThanOrEqual(Math.max(...field));
  expect(Math.min(...values)).toBeGreaterThanOrEqual(Math.min(...field));
});

test('a mesh carried over to itself keeps every value', () => {
  const profile = profileNamed('60E1');
  if (!profile) throw new Error('60E1 is missing');
  const mesh = must(triangulate(must(outlineOf(profile)), { size: 0.006 }));
  const values = carriedOver(mesh, plane(mesh), mesh);
  plane(mesh).forEach((value, i) => {
    expect(values[i]).toBeCloseTo(value, 9);
  });
});

test('the middle of every triangle is found in that triangle', () => {
  const find = locator(coarse);
  for (let t = 0; 3 * t < coarse.triangles.length; t++) {
    const corners = [0, 1, 2].map((k) => 2 * coarse.triangles[3 * t + k]);
    const [x, y] = [0, 1].map((off) => corners.reduce((sum, node) => sum + coarse.xy[node + off] / 3, 0));
    expect(find.triangleAt(x, y)).toBe(t);
  }
});

test('a point outside takes the value of the nearest boundary point', () => {
  const { nodes, weights } = locator(coarse).interpolationAt([0.2, 0, 0, -3]);
  const radius = (k: number) =>
    Math.hypot(
      ...[0, 1].map((off) =>
        [0, 1, 2].reduce((sum, c) => sum + weights[3 * k + c] * coarse.xy[2 * nodes[3 * k + c] + off], 0),
      ),
    );
  expect(locator(coarse).triangleAt(0.2, 0)).toBe(-1);
  expect(radius(0)).toBeCloseTo(0.05, 3);
  expect(
    interpolated(
      { nodes, weights },
      Array.from(coarse.xy).filter((_, i) => i % 2 === 1),
    )[1],
  ).toBeCloseTo(-0.05, 3);
});
