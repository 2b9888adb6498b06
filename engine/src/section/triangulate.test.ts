import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { edgesOf, nearestOn } from './edges.ts';
import { withChords } from './flatten.ts';
import { nodeCount, type TriMesh, triangleArea, triangleCount } from './mesh.ts';
import { meshQuality } from './mesh-quality.ts';
import type { Outline } from './outline.ts';
import { outlineOf, profileNamed, profileNames } from './profile-library.ts';
import { sectionProperties } from './properties.ts';
import { circle, rectangle } from './rectangle.ts';
import { moved, turned } from './transform.ts';
import { triangulate } from './triangulate.ts';

const railNamed = (name: string): Outline => {
  const profile = profileNamed(name);
  if (!profile) throw new Error(`${name} is missing`);
  return must(outlineOf(profile));
};
const rail = railNamed('60E1');
const degrees = 180 / Math.PI;
const polygon = (...corners: readonly (readonly [number, number])[]): Outline => ({
  vertices: corners.map(([x, y]) => ({ x: x / 1e3, y: y / 1e3, bulge: 0 })),
});
/** A size that gives about so many nodes. */
const sizeFor = (outline: Outline, nodes: number) =>
  Math.sqrt((1.4 * sectionProperties(outline).area) / nodes);

/** Shoelace area of the boundary polygon, m². */
function boundaryArea({ xy, boundary }: TriMesh): number {
  let twice = 0;
  for (let i = 0; i < boundary.length; i += 2) {
    const [a, b] = [2 * boundary[i], 2 * boundary[i + 1]];
    twice += xy[a] * xy[b + 1] - xy[b] * xy[a + 1];
  }
  return twice / 2;
}

for (const name of profileNames) {
  test(`${name} meshes with 28° or more at every size from 150 to 1500 nodes`, () => {
    const outline = railNamed(name);
    for (const nodes of [150, 300, 500, 1500]) {
      const mesh = must(triangulate(outline, { size: sizeFor(outline, nodes) }));
      const { smallestAngle, area } = meshQuality(mesh);
      expect(smallestAngle * degrees).toBeGreaterThanOrEqual(28);
      expect(nodeCount(mesh)).toBeGreaterThan(0.5 * nodes);
      expect(nodeCount(mesh)).toBeLessThan(1.5 * nodes);
      // Chords cut full arcs and fill hollow ones; they come out nearly even.
      expect(area / sectionProperties(outline).area).toBeCloseTo(1, 2);
    }
  });
}

const sections: Record<string, Outline> = {
  'an upright rail': rail,
  'a lying rail': turned(rail, -Math.PI / 2),
  'a tilted rail': moved(turned(rail, 0.3), 0.1, 0.2),
  'a rail of chords, as a bar that was deformed': withChords(rail, 2e-5),
  'a bloom': rectangle(0.3, 0.38, 0.03),
  'a round': circle(0.08),
  'an angle': polygon([0, 0], [100, 0], [100, 12], [12, 12], [12, 100], [0, 100]),
  'a strip a hundred times as wide as thick': polygon([0, 0], [200, 0], [200, 2], [0, 2]),
  'a section with a slit': polygon([0, 0], [100, 0], [100, 100], [51, 100], [50.5, 40], [50, 100], [0, 100]),
};

for (const [what, outline] of Object.entries(sections)) {
  const mesh = must(triangulate(outline, { size: 0.009 }));

  test(`${what}: triangles fill the boundary polygon, none turned over`, () => {
    for (let t = 0; t < triangleCount(mesh); t++) expect(triangleArea(mesh, t)).toBeGreaterThan(0);
    expect(meshQuality(mesh).area / boundaryArea(mesh)).toBeCloseTo(1, 12);
    expect(meshQuality(mesh).smallestAngle * degrees).toBeGreaterThanOrEqual(28);
  });

  test(`${what}: nodes − edges + triangles is one (Euler)`, () => {
    const edges = (3 * triangleCount(mesh) + mesh.boundaryEdgeOf.length) / 2;
    expect(nodeCount(mesh) - edges + triangleCount(mesh)).toBe(1);
    expect(new Set(mesh.triangles).size).toBe(nodeCount(mesh));
  });

  test(`${what}: the boundary runs once around, on the true lines and arcs`, () => {
    const edges = edgesOf(outline);
    for (let i = 0; i < mesh.boundary.length; i += 2) {
      const a = mesh.boundary[i];
      expect(mesh.boundary[i + 1]).toBe(mesh.boundary[(i + 2) % mesh.boundary.length]);
      expect(nearestOn(edges, mesh.xy[2 * a], mesh.xy[2 * a + 1]).distance).toBeLessThan(1e-12);
    }
    expect(new Set(mesh.boundary).size).toBe(mesh.boundaryEdgeOf.length);
  });
}

/** Every node has its mirror image among the nodes, to the last digit. */
function isMirrored({ xy }: TriMesh, line: 'x' | 'y'): boolean {
  const places = new Set<string>();
  for (let i = 0; i < xy.length; i += 2) places.add(`${xy[i] + 0},${xy[i + 1] + 0}`);
  for (let i = 0; i < xy.length; i += 2) {
    const [x, y] = line === 'x' ? [0 - xy[i], xy[i + 1]] : [xy[i], 0 - xy[i + 1]];
    if (!places.has(`${x},${y}`)) return false;
  }
  return true;
}

test('a symmetric section gets a symmetric mesh, standing or lying, and a bloom one that is symmetric twice', () => {
  expect(isMirrored(must(triangulate(rail, { size: 0.008 })), 'x')).toBe(true);
  expect(isMirrored(must(triangulate(turned(rail, -Math.PI / 2), { size: 0.008 })), 'y')).toBe(true);
  const bloom = must(triangulate(rectangle(0.3, 0.38, 0.03), { size: 0.03 }));
  expect(isMirrored(bloom, 'x') && isMirrored(bloom, 'y')).toBe(true);
});

test('edges follow small radii: none at the 2 mm toe corner is longer than 4 mm while the head has 8 mm ones', () => {
  const mesh = must(triangulate(rail, { size: 0.008, smallest: 0.002 }));
  const lengths = (near: (x: number, y: number) => boolean) => {
    const found: number[] = [];
    for (let i = 0; i < mesh.boundary.length; i += 2) {
      const [a, b] = [2 * mesh.boundary[i], 2 * mesh.boundary[i + 1]];
      if (near(mesh.xy[a], mesh.xy[a + 1]))
        found.push(Math.hypot(mesh.xy[b] - mesh.xy[a], mesh.xy[b + 1] - mesh.xy[a + 1]));
    }
    return found;
  };
  expect(Math.max(...lengths((x, y) => x > 0.073 && y < 0.0025))).toBeLessThan(0.004);
  expect(Math.max(...lengths((_, y) => y > 0.171))).toBeGreaterThan(0.006);
});

test('every sharp corner is a node', () => {
  const corners = [
    [0, 0],
    [100, 0],
    [100, 12],
    [12, 12],
    [12, 100],
    [0, 100],
  ] as const;
  const { xy } = must(triangulate(polygon(...corners), { size: 0.02 }));
  for (const [x, y] of corners) {
    const found = Array.from({ length: xy.length / 2 }, (_, i) =>
      Math.hypot(xy[2 * i] - x / 1e3, xy[2 * i + 1] - y / 1e3),
    );
    expect(Math.min(...found)).toBeLessThan(1e-15);
  }
});

test('a sharp wedge keeps its own angle and loses nothing else', () => {
  const mesh = must(triangulate(polygon([0, 0], [100, 0], [100, 17.6]), { size: 0.008 }));
  expect(meshQuality(mesh).smallestAngle * degrees).toBeCloseTo(Math.atan(0.176) * degrees, 1);
  expect(meshQuality(mesh).area).toBeCloseTo(0.00088, 12);
});

test('the same outline gives the same mesh', () => {
  expect(must(triangulate(rail, { size: 0.006 }))).toEqual(must(triangulate(rail, { size: 0.006 })));
});

test('any star-shaped section meshes, with 28° wherever its corners are wider', () => {
  const radii = fc.array(fc.double({ min: 60, max: 90, noNaN: true }), { minLength: 12, maxLength: 24 });
  fc.assert(
    fc.property(radii, (lengths) => {
      const star = polygon(
        ...lengths.map(
          (r, i) =>
            [
              r * Math.cos((2 * Math.PI * i) / lengths.length),
              r * Math.sin((2 * Math.PI * i) / lengths.length),
            ] as const,
        ),
      );
      const mesh = must(triangulate(star, { size: 0.015 }));
      expect(meshQuality(mesh).area / sectionProperties(star).area).toBeCloseTo(1, 2);
      expect(meshQuality(mesh).smallestAngle * degrees).toBeGreaterThanOrEqual(28);
    }),
    { numRuns: 60 },
  );
});

test('what cannot be meshed is a failure that says why', () => {
  const reasonFor = (outline: Outline, size = 0.008) => {
    const result = triangulate(outline, { size });
    return result.ok ? '' : result.failure.reason;
  };
  expect(reasonFor(polygon([0, 0], [0, 100], [100, 100], [100, 0]))).toContain('counter-clockwise');
  expect(reasonFor(polygon([0, 0], [100, 0], [100, 100], [-20, 40], [120, 50], [0, 100]))).toContain(
    'crosses or touches itself',
  );
  expect(reasonFor(polygon([0, 0], [50, 50], [100, 0], [100, 100], [50, 50], [0, 100]))).toContain(
    'touches itself',
  );
  expect(reasonFor(rail, 0)).toContain('size');
});
