import { expect } from 'vitest';
import { must } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { outlineOf, profileNamed } from '../../../section/profile-library.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { turned } from '../../../section/transform.ts';
import { copies, loopArea, onLineX, onLineY, type QuadMesh, quadArea, quadCount } from '../quad-mesh.ts';
import { smallestCornerSine } from './element-shape.ts';

/** A rail of the library as it is rolled: lying, its axis on y = 0, foot to the left. */
export function lyingRail(name: string): Outline {
  const profile = profileNamed(name);
  if (!profile) throw new Error(`${name} is missing`);
  return turned(must(outlineOf(profile)), -Math.PI / 2);
}

/** What every mesh of a whole outline promises, whatever its size. */
export function expectSound(mesh: QuadMesh, whole: Outline, sine: number): void {
  const area = sectionProperties(whole).area / copies(mesh.symmetry);
  expect(Math.abs(loopArea(mesh.loop, mesh.xy) / area - 1)).toBeLessThan(1e-12);
  let sum = 0;
  for (let k = 0; k < quadCount(mesh); k++) sum += quadArea(mesh.quads, mesh.xy, k);
  expect(Math.abs(sum / area - 1)).toBeLessThan(1e-12);
  expect(smallestCornerSine(mesh.quads, mesh.xy)).toBeGreaterThan(sine);
  expectOneRing(mesh);
  expectOnLines(mesh);
}

/** Nodes − edges + elements is one (Euler), and the edges that belong to one element only are those of the loop. */
function expectOneRing({ xy, quads, loop }: QuadMesh): void {
  const nodes = xy.length / 2;
  const edges = new Set<number>();
  for (let i = 0; i < quads.length; i++) edges.add(quads[i] * nodes + quads[i % 4 === 3 ? i - 3 : i + 1]);
  const open = [...edges].filter((edge) => !edges.has((edge % nodes) * nodes + Math.floor(edge / nodes)));
  const around = Array.from(loop, (node, i) => node * nodes + loop[(i + 1) % loop.length]);
  expect(open.sort()).toEqual(around.sort());
  expect(new Set(quads).size).toBe(nodes);
  expect(nodes - (edges.size + open.length) / 2 + quads.length / 4).toBe(1);
}

/** The edges on a line of symmetry join up to one row, every node of it on the line to the last digit, none beyond. */
function expectOnLines({ xy, loop, lies, symmetry }: QuadMesh): void {
  for (const [off, at, side] of [
    [0, symmetry.x, onLineX],
    [1, symmetry.y, onLineY],
  ] as const) {
    const rows =
      lies.length -
      Array.from(lies).filter((s, i) => s !== side || lies[(i + 1) % lies.length] === side).length;
    expect(rows).toBe(at === undefined ? 0 : 1);
    if (at === undefined) continue;
    for (let i = 0; i < loop.length; i++) {
      if (lies[i] !== side) continue;
      expect(xy[2 * loop[i] + off]).toBe(at);
      expect(xy[2 * loop[(i + 1) % loop.length] + off]).toBe(at);
    }
    for (let i = off; i < xy.length; i += 2) expect(xy[i]).toBeGreaterThanOrEqual(at);
  }
}
