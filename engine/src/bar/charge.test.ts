import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { nodeAreas, nodeCount, triangleArea, triangleCount } from '../section/mesh.ts';
import { gradeNamed } from '../steel/grades.ts';
import { heatingLaw } from '../steel/heating.ts';
import { charge, massOfBloom } from './charge.ts';
import { balanceOf, heatContent } from './heat-content.ts';
import { deepestNode, snapshotOf } from './snapshot.ts';

const grade = gradeNamed('R260') ?? {
  name: '',
  standard: '',
  composition: { C: 0, Si: 0, Mn: 0, P: 0, S: 0, Cr: 0, V: 0 },
};
const size = { height: 0.38, width: 0.28, cornerRadius: 0.02, length: 9, charging: 20 };

test('a bloom weighs its volume at 7850 kg/m³, hot or cold', () => {
  const area = 0.38 * 0.28 - (4 - Math.PI) * 0.02 ** 2;
  expect(massOfBloom(size)).toBeCloseTo(7850 * 9 * area, 6);
  expect(must(charge({ ...size, charging: 600 }, grade)).mass).toBeCloseTo(massOfBloom(size), 9);
});

test('a bloom charged hot is longer and wider than cold, by the same factor', () => {
  const [cold, hot] = [must(charge(size, grade)), must(charge({ ...size, charging: 600 }, grade))];
  const growth = hot.length / cold.length;
  expect(growth).toBeGreaterThan(1.006);
  expect(snapshotOf(hot).area / snapshotOf(cold).area).toBeCloseTo(growth ** 2, 9);
  expect(nodeCount(cold.mesh)).toBeGreaterThan(150);
  expect(nodeCount(cold.mesh)).toBeLessThan(260);
});

test('a cold bloom holds no heat, a warm one its mass times the enthalpy', () => {
  expect(heatContent(must(charge(size, grade)))).toBe(0);
  const warm = must(charge({ ...size, charging: 300 }, grade));
  expect(heatContent(warm) / (warm.mass * heatingLaw(grade).enthalpy(300))).toBeCloseTo(1, 12);
});

test('head, middle and tail stand for a third each', () => {
  const cold = must(charge(size, grade));
  const warmHead = {
    clock: 0,
    temperature: new Float64Array(cold.middle.temperature.length).fill(900),
  };
  const bar = { ...cold, head: warmHead };
  expect(heatContent(bar) / ((bar.mass * heatingLaw(grade).enthalpy(900)) / 3)).toBeCloseTo(1, 12);
});

test('the core is the node in the middle of the bloom', () => {
  const { mesh } = must(charge(size, grade));
  const core = deepestNode(mesh);
  expect(Math.abs(mesh.xy[2 * core])).toBeLessThan(0.03);
  expect(Math.abs(mesh.xy[2 * core + 1])).toBeLessThan(0.06);
});

test('heat that no name explains stands in the ledger as unaccounted', () => {
  const [cold, warm] = [must(charge(size, grade)), must(charge({ ...size, charging: 300 }, grade))];
  const { energyGainedJ } = balanceOf(cold, warm, {}, { furnace: 1e9 });
  expect(energyGainedJ.unaccounted).toBeCloseTo(heatContent(warm) - 1e9, 0);
});

test('the mesh is finer below the skin, symmetric, and keeps every triangle and the whole area', () => {
  const { mesh } = must(charge({ ...size, cornerRadius: 0.01 }, grade));
  const onSkin = new Set(mesh.boundary);
  const inner = Array.from({ length: nodeCount(mesh) }, (_, i) => i).filter((i) => !onSkin.has(i));
  const depth = (i: number) => Math.min(0.14 - Math.abs(mesh.xy[2 * i]), 0.19 - Math.abs(mesh.xy[2 * i + 1]));
  expect(Math.min(...inner.map(depth))).toBeLessThan(0.016);
  for (let t = 0; t < triangleCount(mesh); t++) expect(triangleArea(mesh, t)).toBeGreaterThan(1e-5);
  const area = nodeAreas(mesh).reduce((sum, each) => sum + each, 0);
  expect(area / massOfBloom(size)).toBeCloseTo(1 / (7850 * 9), 6);
  const places = new Set(inner.map((i) => `${mesh.xy[2 * i]} ${mesh.xy[2 * i + 1]}`));
  for (const i of inner) expect(places.has(`${0 - mesh.xy[2 * i]} ${mesh.xy[2 * i + 1]}`)).toBe(true);
});
