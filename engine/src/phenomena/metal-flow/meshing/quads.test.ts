import { expect, test } from 'vitest';
import schedule from '../../../../../reference/schedules/60E1.json' with { type: 'json' };
import { must } from '../../../outcome/result.ts';
import { edgesOf, nearestOn } from '../../../section/edges.ts';
import { withChords } from '../../../section/flatten.ts';
import type { Outline } from '../../../section/outline.ts';
import { profileNames } from '../../../section/profile-library.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { mirrored, moved } from '../../../section/transform.ts';
import type { QuadMesh, Symmetry } from '../quad-mesh.ts';
import { loopArea } from '../quad-mesh.ts';
import { expectSound, lyingRail } from './mesh-laws.fixture.ts';
import { quadMesh, quadMeshOfAbout } from './quads.ts';
import { outlineOf } from './whole.ts';

const half: Symmetry = { y: 0 };
const quarter: Symmetry = { x: 0, y: 0 };
const nodesOf = (mesh: QuadMesh): number => mesh.xy.length / 2;

for (const name of profileNames) {
  test(`${name}, half of it at three sizes: area exact, one ring, corners wide, axis on its line`, () => {
    for (const size of [0.02, 0.012, 0.007]) {
      const outline = lyingRail(name);
      expectSound(must(quadMesh(outline, { size, symmetry: half })), outline, 0.3);
    }
  });
}

const sections: readonly (readonly [string, Outline, Symmetry, number])[] = [
  ['a quarter of a bloom', rectangle(0.28, 0.38, 0.03), quarter, 0.036],
  ['half of a bloom', rectangle(0.28, 0.38, 0.03), half, 0.036],
  ['right half of a bloom', rectangle(0.28, 0.38, 0.03), { x: 0 }, 0.036],
  ['a quarter of a sharp square', rectangle(0.05, 0.05, 0), quarter, 0.006],
  ['a quarter of a flat', rectangle(0.12, 0.06, 0.002), quarter, 0.008],
  ['a rail without symmetry', lyingRail('60E1'), {}, 0.01],
  ['half of a rail that lies elsewhere', moved(lyingRail('60E1'), 0.7, 0.1), { y: 0.1 }, 0.01],
  ['half of a rail of fine chords', withChords(lyingRail('60E1'), 2e-5), half, 0.01],
  ['half of a rail of coarse chords', withChords(lyingRail('60E1'), 2e-4), half, 0.01],
];
for (const [what, outline, symmetry, size] of sections) {
  test(`${what}: area exact, one ring, corners wide, lines of symmetry kept`, () => {
    expectSound(must(quadMesh(outline, { size, symmetry })), outline, 0.3);
  });
}

test('a web of 9 mm half thickness has three elements across at size 10 mm, and so at 20', () => {
  for (const size of [0.01, 0.02]) {
    const { xy, loop } = must(quadMesh(rectangle(0.2, 0.018, 0), { size, symmetry: half }));
    const along = Array.from(loop).filter((node) => xy[2 * node + 1] === 0).length - 1;
    expect(0.2 / along).toBeLessThan(0.009 / 1.3);
  }
});

for (const name of ['60E1', '49E1', '136RE', 'A120']) {
  test(`${name}: 200 to 1200 nodes come out within 15 %`, () => {
    for (const nodes of [200, 300, 470, 700, 1200]) {
      const mesh = must(quadMeshOfAbout(lyingRail(name), half, nodes));
      expect(Math.abs(nodesOf(mesh) / nodes - 1)).toBeLessThan(0.15);
    }
  });
}

const passes: readonly { code: string; exitYxMm: readonly (readonly number[])[] }[] = schedule.passes;
for (const { code, exitYxMm } of passes) {
  test(`${code} as it leaves its groove, a row of short edges: sound and within 20 % of 300 and 700 nodes`, () => {
    const vertices = exitYxMm.map(([y, x]) => ({ x: x / 1e3, y: y / 1e3, bulge: 0 }));
    const above = { vertices: sectionProperties({ vertices }).area > 0 ? vertices : vertices.toReversed() };
    for (const nodes of [300, 700]) {
      const mesh = must(quadMeshOfAbout(above, half, nodes));
      expect(Math.abs(nodesOf(mesh) / nodes - 1)).toBeLessThan(0.2);
      expectSound(mesh, withImage(above), 0.3);
    }
  });
}

/** A half above the axis with its mirror image below. */
function withImage({ vertices }: Outline): Outline {
  const start = vertices.findIndex(({ y }, i) => y === 0 && vertices.at(i - 1)?.y === 0);
  const skin = vertices.map((_, i) => vertices[(start + i) % vertices.length]);
  const below = skin.slice(1, -1).map(({ x, y }) => ({ x, y: -y, bulge: 0 }));
  return { vertices: [...skin, ...below.reverse()] };
}

test('meshed from its own outline ten times over, a section keeps its area and its nodes, and its form settles', () => {
  const edges = edgesOf(lyingRail('60E1'));
  const off = (mesh: QuadMesh): number =>
    Math.max(...outlineOf(mesh, mesh.xy).vertices.map(({ x, y }) => nearestOn(edges, x, y).distance));
  let mesh = must(quadMeshOfAbout(lyingRail('60E1'), half, 470));
  const offs: number[] = [];
  for (let pass = 0; pass < 10; pass++) {
    mesh = must(quadMeshOfAbout(outlineOf(mesh, mesh.xy), half, 470));
    offs.push(off(mesh));
  }
  expect(2 * loopArea(mesh.loop, mesh.xy)).toBeCloseTo(sectionProperties(lyingRail('60E1')).area, 13);
  expect(Math.abs(nodesOf(mesh) / 470 - 1)).toBeLessThan(0.15);
  // Radii of 2 and 3 mm are smaller than the mesh; half a millimetre of them goes at first, then no more.
  expect(Math.max(...offs)).toBeLessThan(6e-4);
  expect(offs[9] - offs[4]).toBeLessThan(5e-5);
});

test('a half given as such is meshed as the half of the whole', () => {
  const [whole, above] = [rectangle(0.28, 0.38, 0.03), rectangle(0.28, 0.19, 0)];
  const fromHalf = must(quadMesh(moved(above, 0, 0.095), { size: 0.036, symmetry: half }));
  expect(loopArea(fromHalf.loop, fromHalf.xy)).toBeCloseTo(sectionProperties(above).area, 14);
  const twice = must(quadMesh(whole, { size: 0.036, symmetry: half }));
  expect(twice).toEqual(must(quadMesh(whole, { size: 0.036, symmetry: half })));
});

test('an end that misses the axis by 10 nm stands on it', () => {
  const { vertices } = moved(rectangle(0.1, 0.03, 0), 0, 0.015);
  const off = {
    vertices: vertices.map((vertex) => ({ ...vertex, y: Math.max(vertex.y, vertex.x > 0 ? 1e-8 : 0) })),
  };
  const mesh = must(quadMesh(off, { size: 0.01, symmetry: half }));
  expect(Math.max(...mesh.lies)).toBe(2);
  expect([...mesh.xy].filter((y, i) => i % 2 === 1 && y > 0 && y < 1e-6)).toHaveLength(0);
});

test('a section that is its own mirror image gets a mesh that is, left to right, as lines and arcs and as chords', () => {
  for (const outline of [rectangle(0.28, 0.38, 0.03), withChords(rectangle(0.28, 0.38, 0.03), 5e-4)]) {
    const { xy } = must(quadMesh(outline, { size: 0.036, symmetry: half }));
    for (let i = 0; i < xy.length; i += 2) {
      let nearest = 1;
      for (let j = 0; j < xy.length; j += 2)
        nearest = Math.min(nearest, Math.hypot(xy[i] + xy[j], xy[i + 1] - xy[j + 1]));
      expect(nearest).toBeLessThan(1e-12);
    }
  }
});

test('the mirrored rail is meshed as well as the rail', () => {
  const image = mirrored(lyingRail('60E1'), 'x');
  expectSound(must(quadMesh(image, { size: 0.01, symmetry: half })), image, 0.3);
});

test('where there is nothing to mesh, the failure says why', () => {
  const reasonFor = (outline: Outline, symmetry: Symmetry) => {
    const mesh = quadMesh(outline, { size: 0.01, symmetry });
    return mesh.ok ? '' : mesh.failure.reason;
  };
  expect(reasonFor(moved(rectangle(0.1, 0.1, 0), 0, -0.2), half)).toContain('leaves 0 parts');
  expect(reasonFor(moved(rectangle(0.1, 0.1, 0), 0, 0.2), half)).toContain('does not reach');
  expect(reasonFor({ vertices: rectangle(0.1, 0.1, 0).vertices.toReversed() }, {})).toContain(
    'counter-clockwise',
  );
});
