import { expect, test } from 'vitest';
import {
  bimetalCurvature,
  curvatureOfRise,
  hardeningRectangleMoment,
  passingThreeRollers,
  rectangleBend,
  rectangleCore,
  rectangleLeftStress,
  rectangleMoment,
  rectangleSetBend,
  rise,
  risingSpan,
  shapeFactors,
  sheetSpringback,
} from './closed-forms.ts';

test('a bar of 50 × 100 mm under 24 kN·m keeps an elastic core of 77.46 mm and bends to R 32.27 m', () => {
  // Worked problem of a strength text, σy 240 MPa, E 200 GPa; recomputed.
  const firstYield = (240e6 * 0.05 * 0.1 ** 2) / 6;
  expect(firstYield).toBeCloseTo(20e3, 6);
  expect(shapeFactors.rectangle * firstYield).toBeCloseTo(30e3, 6);
  expect(rectangleCore(24e3 / firstYield) * 100).toBeCloseTo(77.46, 2);
  expect(1 / (rectangleBend(24e3 / firstYield) * (240e6 / 200e9 / 0.05))).toBeCloseTo(32.27, 2);
});

test('a bar of 50 × 120 mm unloaded from 36.8 kN·m keeps −66.7 MPa outside, +35.6 at the core, and R 225 m', () => {
  // Beer & Johnston, examples 4.5 and 4.6, from memory, agrees with the formulas; the book prints 35.5.
  const moment = 36.8e3 / ((240e6 * 0.05 * 0.12 ** 2) / 6);
  const perYield = 240e6 / 200e9 / 0.06;
  expect(rectangleCore(moment) * 120).toBeCloseTo(80, 6);
  expect(1 / (rectangleBend(moment) * perYield)).toBeCloseTo(33.3, 1);
  const left = rectangleLeftStress(moment);
  expect(left.surface * 240).toBeCloseTo(-66.7, 1);
  expect(left.coreEdge * 240).toBeCloseTo(35.6, 1);
  expect(1 / (rectangleSetBend(rectangleBend(moment)) * perYield)).toBeCloseTo(225, 6);
});

test('a sheet bent to R 50 springs back to R 55.99 where σy R / (E t) is 0.03571', () => {
  // Formula and inputs published, value computed: σy 300 MPa, E 210 GPa, t 2 mm.
  const x = (300 * 50) / (210e3 * 2);
  expect(sheetSpringback(x)).toBeCloseTo(0.89304, 5);
  expect(50 / sheetSpringback(x)).toBeCloseTo(55.99, 2);
});

test('a rectangle follows its table of moment and of the bend that stays', () => {
  // Computed from the closed form, five bends.
  const table = [
    [2, 1.375, 0.625],
    [3, 1.4444, 1.5556],
    [4, 1.46875, 2.53125],
    [5, 1.48, 3.52],
    [10, 1.495, 8.505],
  ];
  for (const [bend, moment, stays] of table) {
    expect(rectangleMoment(bend)).toBeCloseTo(moment, 4);
    expect(rectangleSetBend(bend)).toBeCloseTo(stays, 4);
    expect(rectangleBend(rectangleMoment(bend))).toBeCloseTo(bend, 10);
  }
});

test('without yield every form is the elastic one', () => {
  expect(rectangleMoment(0.7)).toBe(0.7);
  expect(rectangleSetBend(0.7)).toBe(0);
  expect(risingSpan(1)).toBe(1);
  expect(passingThreeRollers(1).offset).toBeCloseTo(1 / 3, 12);
  expect(hardeningRectangleMoment(4, 1)).toBe(4);
  expect(hardeningRectangleMoment(4, 0)).toBe(rectangleMoment(4));
});

test('the curvature over a rising span integrates to its closed form', () => {
  // Midpoint rule with 20 000 points, 1e-6.
  const moment = 1.35;
  let sum = 0;
  for (let i = 0; i < 20_000; i++) {
    const share = (i + 0.5) / 20_000;
    sum += (rectangleBend(moment * share) * share) / 20_000;
  }
  expect(sum).toBeCloseTo(risingSpan(moment) / 3, 6);
});

test('two equal layers bend by 1.5 times the strain difference over the height', () => {
  // Timoshenko 1925: equal thickness, equal modulus.
  expect(bimetalCurvature(1e-3, 0.01, 1, 1)).toBeCloseTo((1.5 * 1e-3) / 0.01, 12);
});

test('20 K between head and foot of a 60E1 are 1.89 m of rise on 100 m', () => {
  // κ = αΔT/H with α 13e-6, H 172 mm.
  const curvature = (13e-6 * 20) / 0.172;
  expect(rise(curvature, 100)).toBeCloseTo(1.89, 2);
  expect(curvatureOfRise(rise(curvature, 100), 100)).toBeCloseTo(curvature, 15);
});
