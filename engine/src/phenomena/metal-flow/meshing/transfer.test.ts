import { expect, test } from 'vitest';
import type { Field } from '../../../outcome/field.ts';
import { must } from '../../../outcome/result.ts';
import { nodeAreas } from '../../../section/mesh.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { scaled } from '../../../section/transform.ts';
import type { QuadMesh } from '../quad-mesh.ts';
import { lyingRail } from './mesh-laws.fixture.ts';
import { quadNodeAreas } from './node-areas.ts';
import { quadMesh } from './quads.ts';
import { transferred } from './transfer.ts';
import { outlineOf, triMeshOf } from './whole.ts';

const meshed = (size: number, by = 1): QuadMesh =>
  must(quadMesh(scaled(lyingRail('60E1'), by), { size, symmetry: { y: 0 } }));
const coarse = meshed(0.014);
const fine = meshed(0.009);
const larger = meshed(0.012, 1.01);

const over = ({ xy }: { xy: Field }, value: (x: number, y: number) => number): Float64Array =>
  Float64Array.from({ length: xy.length / 2 }, (_, i) => value(xy[2 * i], xy[2 * i + 1]));
const mean = (field: Field, areas: Field): number => {
  let [sum, area] = [0, 0];
  for (let i = 0; i < field.length; i++) [sum, area] = [sum + field[i] * areas[i], area + areas[i]];
  return sum / area;
};
const meanOn = (mesh: QuadMesh, field: Field): number => mean(field, quadNodeAreas(mesh, mesh.xy));

test('the areas of the nodes carry area and centroid of the part exactly', () => {
  const { area, centroid } = sectionProperties(
    outlineOf({ ...coarse, symmetry: {}, lies: new Int32Array(coarse.loop.length) }, coarse.xy),
  );
  const areas = quadNodeAreas(coarse, coarse.xy);
  expect(areas.reduce((sum, own) => sum + own, 0) / area).toBeCloseTo(1, 12);
  expect(
    mean(
      over(coarse, (x) => x),
      areas,
    ),
  ).toBeCloseTo(centroid.x, 14);
  expect(
    mean(
      over(coarse, (_, y) => y),
      areas,
    ),
  ).toBeCloseTo(centroid.y, 14);
});

test('the mean is kept to 1e-9, finer, coarser and on a section that is larger by a hundredth', () => {
  const strain = (x: number, y: number) => 0.3 + 0.3 * Math.sin(90 * x) * Math.cos(70 * y);
  for (const [from, to] of [
    [coarse, fine],
    [fine, coarse],
    [coarse, larger],
    [larger, coarse],
  ]) {
    const field = over(from, strain);
    const [carried] = transferred(from, to, [field]);
    expect(Math.abs(meanOn(to, carried) / meanOn(from, field) - 1)).toBeLessThan(1e-9);
  }
});

test('a field leaves its range nowhere, so that nothing becomes negative', () => {
  const patch = over(coarse, (x, y) => (x > 0.1 && y > 0.02 ? 0.8 : 0));
  for (const to of [fine, larger]) {
    const [carried] = transferred(coarse, to, [patch]);
    expect(Math.min(...carried)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...carried)).toBeLessThanOrEqual(0.8);
    expect(Math.abs(meanOn(to, carried) / meanOn(coarse, patch) - 1)).toBeLessThan(1e-9);
  }
});

test('a field that is the same everywhere stays so to the last digit, and several fields go at once', () => {
  const [seven, half] = transferred(coarse, larger, [over(coarse, () => 7), over(coarse, () => 0.5)]);
  expect(new Set(seven)).toEqual(new Set([7]));
  expect(new Set(half)).toEqual(new Set([0.5]));
});

test('a linear field comes out linear inside but for the one shift that keeps its mean', () => {
  const linear = (x: number, y: number) => 2 + x + 3 * y;
  const [carried] = transferred(coarse, fine, [over(coarse, linear)]);
  const skin = new Set(fine.loop);
  const shifts = over(fine, linear)
    .map((value, i) => value - carried[i])
    .filter((_, i) => !skin.has(i));
  expect(Math.max(...shifts) - Math.min(...shifts)).toBeLessThan(1e-12);
  // The chords of two skins lie up to 0.1 mm apart; that is all that the mean can have missed.
  expect(Math.abs(shifts[0])).toBeLessThan(3 * 1e-4);
});

test('from the whole section onto the part as from the part itself', () => {
  const whole = triMeshOf(coarse);
  const field = over(coarse, (x, y) => 900 + 500 * x - 3e4 * y * y);
  const [fromWhole] = transferred(whole, fine, [Float64Array.from(whole.part, (node) => field[node])]);
  const [fromPart] = transferred(coarse, fine, [field]);
  for (const [i, value] of fromWhole.entries()) expect(Math.abs(value - fromPart[i])).toBeLessThan(0.2);
  expect(meanOn(fine, fromWhole)).toBeCloseTo(
    mean(
      Float64Array.from(whole.part, (node) => field[node]),
      nodeAreas(whole),
    ),
    9,
  );
});

test('the same mesh gives the same field back', () => {
  const field = over(coarse, (x, y) => Math.sin(200 * x) + y);
  const [carried] = transferred(coarse, coarse, [field]);
  for (const [i, value] of carried.entries()) expect(value).toBeCloseTo(field[i], 12);
});
