import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import { nodeCount, triangleArea, triangleCount } from '../../../section/mesh.ts';
import type { Outline } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { moved } from '../../../section/transform.ts';
import { copies, loopArea, type Symmetry } from '../quad-mesh.ts';
import { lyingRail } from './mesh-laws.fixture.ts';
import { quadMesh } from './quads.ts';
import { inTwo } from './split-in-two.ts';
import { outlineOf, triMeshOf, wholeXy } from './whole.ts';

const cases: readonly (readonly [string, Outline, Symmetry, number])[] = [
  ['half a rail', lyingRail('60E1'), { y: 0 }, 0.01],
  ['half a rail beside the origin', moved(lyingRail('60E1'), 0.3, 0.1), { y: 0.1 }, 0.01],
  ['a whole rail', lyingRail('60E1'), {}, 0.012],
  ['a quarter of a bloom', rectangle(0.28, 0.38, 0.03), { x: 0, y: 0 }, 0.036],
  ['the right half of a bloom', rectangle(0.28, 0.38, 0.03), { x: 0 }, 0.036],
];

for (const [what, section, symmetry, size] of cases) {
  const mesh = must(quadMesh(section, { size, symmetry }));
  const whole = triMeshOf(mesh);
  const place = (node: number) => [whole.xy[2 * node], whole.xy[2 * node + 1]];

  test(`${what}: triangles of positive area fill the whole section`, () => {
    let area = 0;
    for (let t = 0; t < triangleCount(whole); t++) {
      expect(triangleArea(whole, t)).toBeGreaterThan(0);
      area += triangleArea(whole, t);
    }
    expect(area / sectionProperties(section).area).toBeCloseTo(1, 12);
    expect(area / (copies(symmetry) * loopArea(mesh.loop, mesh.xy))).toBeCloseTo(1, 12);
  });

  test(`${what}: no node twice, none unused, nodes − edges + triangles one (Euler)`, () => {
    const places = new Set(Array.from({ length: nodeCount(whole) }, (_, i) => place(i).join()));
    expect(places.size).toBe(nodeCount(whole));
    expect(new Set(whole.triangles).size).toBe(nodeCount(whole));
    const edges = (3 * triangleCount(whole) + whole.boundaryEdgeOf.length) / 2;
    expect(nodeCount(whole) - edges + triangleCount(whole)).toBe(1);
  });

  test(`${what}: the boundary runs once around in order, along the edges of its outline`, () => {
    const outline = outlineOf(mesh, mesh.xy);
    for (let i = 0; i < whole.boundary.length; i += 2) {
      expect(whole.boundary[i + 1]).toBe(whole.boundary[(i + 2) % whole.boundary.length]);
      const { x, y } = outline.vertices[whole.boundaryEdgeOf[i / 2]];
      expect(place(whole.boundary[i])).toEqual([x, y]);
    }
    expect(outline.vertices).toHaveLength(whole.boundaryEdgeOf.length);
    expect(sectionProperties(outline).area / sectionProperties(section).area).toBeCloseTo(1, 12);
  });

  test(`${what}: every node is a node of the computed part or its image, wherever that moves`, () => {
    const stretched = Float64Array.from(mesh.xy, (place, i) =>
      i % 2 === 0
        ? (symmetry.x ?? 0) + 1.2 * (place - (symmetry.x ?? 0))
        : (symmetry.y ?? 0) + 0.9 * (place - (symmetry.y ?? 0)),
    );
    for (const xy of [mesh.xy, Float64Array.from(stretched)]) {
      const all = wholeXy(mesh, xy);
      whole.part.forEach((node, i) => {
        const [dx, dy] = [xy[2 * node] - (symmetry.x ?? 0), xy[2 * node + 1] - (symmetry.y ?? 0)];
        const [ex, ey] = [all[2 * i] - (symmetry.x ?? 0), all[2 * i + 1] - (symmetry.y ?? 0)];
        expect(Math.abs(symmetry.x === undefined ? dx - ex : Math.abs(dx) - Math.abs(ex))).toBeLessThan(
          1e-15,
        );
        expect(Math.abs(symmetry.y === undefined ? dy - ey : Math.abs(dy) - Math.abs(ey))).toBeLessThan(
          1e-15,
        );
      });
    }
    expect(Array.from(whole.part.slice(0, mesh.xy.length / 2))).toEqual(
      Array.from(whole.part.slice(0, mesh.xy.length / 2).keys()),
    );
  });
}

test('an element is cut where its triangles are the wider', () => {
  const flat = Float64Array.of(0, 0, 1, -0.2, 2, 0, 1, 0.2);
  expect([...inTwo([0, 1, 2, 3], flat)]).toEqual([0, 1, 3, 1, 2, 3]);
  expect([...inTwo([1, 2, 3, 0], flat)]).toEqual([1, 2, 3, 1, 3, 0]);
});
