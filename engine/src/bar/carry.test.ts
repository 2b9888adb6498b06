import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { nodeAreas } from '../section/mesh.ts';
import { rectangle } from '../section/rectangle.ts';
import { triangulate } from '../section/triangulate.ts';
import { gradeNamed } from '../steel/grades.ts';
import { heatingLaw } from '../steel/heating.ts';
import { carried, warm } from './carry.ts';

const grade = gradeNamed('R260');
if (!grade) throw new Error('no R260');
const law = heatingLaw(grade);
const thick = must(triangulate(rectangle(0.2, 0.2, 0.02), { size: 0.02 }));
const thin = must(triangulate(rectangle(0.22, 0.16, 0.016), { size: 0.02 }));
const back = (x: number, y: number) => [x / 1.1, y / 0.8] as const;

const fieldOn = (mesh: typeof thick, of: (x: number, y: number) => number) =>
  Float64Array.from({ length: mesh.xy.length / 2 }, (_, i) => of(mesh.xy[2 * i], mesh.xy[2 * i + 1]));
const heatPerKg = (mesh: typeof thick, field: Float64Array) => {
  const areas = nodeAreas(mesh);
  const area = areas.reduce((sum, a) => sum + a, 0);
  return field.reduce((sum, T, i) => sum + areas[i] * law.enthalpy(T), 0) / area;
};

test('a section of one temperature keeps it through a pass', () => {
  const { temperatures, corrections } = carried(thick, thin, back, [fieldOn(thick, () => 1111)], law);
  for (const T of temperatures[0]) expect(T).toBeCloseTo(1111, 9);
  expect(corrections[0]).toBeCloseTo(0, 9);
});

test('a temperature that falls evenly across the section is drawn out with it', () => {
  const slope = (x: number, y: number) => 1100 + 400 * x + 600 * y;
  const before = must(triangulate(rectangle(0.2, 0.2, 0), { size: 0.02 }));
  const after = must(triangulate(rectangle(0.22, 0.16, 0), { size: 0.02 }));
  const { temperatures } = carried(before, after, back, [fieldOn(before, slope)], law);
  const wanted = fieldOn(after, (x, y) => slope(...back(x, y)));
  // node areas weigh the two meshes differently: a shift of millikelvins
  for (let i = 0; i < wanted.length; i++) expect(Math.abs(temperatures[0][i] - wanted[i])).toBeLessThan(0.01);
});

test('heat per kilogram is the same before and after to round-off, however the field looks', () => {
  const field = fieldOn(thick, (x, y) => 1180 - 9000 * (x * x + y * y) + 40 * Math.sin(90 * x));
  const { temperatures, corrections } = carried(thick, thin, back, [field], law);
  expect(heatPerKg(thin, temperatures[0]) / heatPerKg(thick, field)).toBeCloseTo(1, 12);
  expect(Math.abs(corrections[0])).toBeLessThan(2);
  expect(Math.abs(corrections[0])).toBeGreaterThan(1e-6);
});

test('heat put into the nodes is found again in the enthalpy', () => {
  const field = fieldOn(thin, (x) => 900 + 1000 * x);
  const before = heatPerKg(thin, field);
  warm(field, new Float64Array(field.length).fill(7000), law);
  expect(heatPerKg(thin, field) - before).toBeCloseTo(7000, 3);
});
