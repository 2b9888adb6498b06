import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { nodeAreas } from '../section/mesh.ts';
import { rectangle } from '../section/rectangle.ts';
import { mirroredMesh } from '../section/transform.ts';
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
  // straight in temperature is not quite straight in heat: the hundredth of a kelvin
  for (let i = 0; i < wanted.length; i++) expect(Math.abs(temperatures[0][i] - wanted[i])).toBeLessThan(0.01);
});

test('heat per kilogram is the same before and after to round-off, however the field looks', () => {
  const field = fieldOn(thick, (x, y) => 1180 - 9000 * (x * x + y * y) + 40 * Math.sin(90 * x));
  const { temperatures, corrections } = carried(thick, thin, back, [field], law);
  expect(heatPerKg(thin, temperatures[0]) / heatPerKg(thick, field)).toBeCloseTo(1, 12);
  // 1.0 K from the values at the nodes alone; corners that are rounded otherwise leave a third of it
  expect(Math.abs(corrections[0])).toBeLessThan(0.5);
  expect(Math.abs(corrections[0])).toBeGreaterThan(1e-6);
});

/** 1200 °C, and 150 K colder at the skin within some millimetres. */
const chilled = (depth: number) => (x: number, y: number) => {
  const inside = Math.min(0.1 - Math.abs(x), 0.1 - Math.abs(y));
  return 1200 - 150 * Math.exp(-Math.max(0, inside) / depth);
};

test.each([
  ['finer', 0.03, 0.012],
  ['alike', 0.02, 0.02],
  ['coarser', 0.015, 0.03],
])('a steep skin keeps its heat within 1 K of the mean on a mesh that is %s', (_, size, newSize) => {
  const before = must(triangulate(rectangle(0.2, 0.2, 0.02), { size }));
  const after = must(triangulate(rectangle(0.22, 0.16, 0.016), { size: newSize }));
  const field = fieldOn(before, chilled(0.008));
  const { temperatures, corrections } = carried(before, after, back, [field], law);
  expect(Math.abs(corrections[0])).toBeLessThan(1);
  expect(heatPerKg(after, temperatures[0]) / heatPerKg(before, field)).toBeCloseTo(1, 12);
  expect(Math.max(...temperatures[0])).toBeLessThan(Math.max(...field) + 1);
  expect(Math.min(...temperatures[0])).toBeGreaterThan(Math.min(...field) - 1);
});

test('a section that is not changed keeps the temperature of every node', () => {
  const field = fieldOn(thick, chilled(0.008));
  const { temperatures } = carried(thick, thick, (x, y) => [x, y], [field], law);
  for (let i = 0; i < field.length; i++) expect(temperatures[0][i]).toBeCloseTo(field[i], 6);
});

test('what was left and right is mirrored in the mirror image', () => {
  const skewed = (x: number, y: number) => chilled(0.008)(x, y) + 300 * x - 200 * y;
  const image = (mesh: typeof thick) => mirroredMesh(mesh, 8);
  const one = carried(thick, thin, back, [fieldOn(thick, skewed)], law).temperatures[0];
  const field = fieldOn(image(thick), (x, y) => skewed(-x, y));
  const other = carried(image(thick), image(thin), back, [field], law).temperatures[0];
  for (let i = 0; i < one.length; i++) expect(other[i]).toBeCloseTo(one[i], 6);
});

test('heat put into the nodes is found again in the enthalpy', () => {
  const field = fieldOn(thin, (x) => 900 + 1000 * x);
  const before = heatPerKg(thin, field);
  warm(field, new Float64Array(field.length).fill(7000), law);
  expect(heatPerKg(thin, field) - before).toBeCloseTo(7000, 3);
});
