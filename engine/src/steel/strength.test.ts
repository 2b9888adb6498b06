import { expect, test } from 'vitest';
import { coldModulus, elasticModulus, yieldFactor } from './elastic-modulus.ts';
import { gradeNamed, gradeNames } from './grades.ts';
import { pearliteProof, pearliteSpacing, usualPearlite } from './pearlite-spacing.ts';
import { assumedProof, yieldCurve } from './yield-curve.ts';

const grade = (name: string) => {
  const found = gradeNamed(name);
  if (!found) throw new Error(`no grade ${name}`);
  return found;
};

test('R260 starts to yield at 400 MPa, rounds to 525 MPa proof and passes 472 MPa at 0.12 %', () => {
  const curve = yieldCurve(grade('R260'));
  expect(curve.stress(0)).toBeCloseTo(400e6, 0);
  expect(curve.proof / 1e6).toBeCloseTo(524.8, 1);
  expect(curve.stress(0.002)).toBeCloseTo(curve.proof, 0);
  // Meyer et al. 2020: 472 MPa axial at the high plastic-work limit (read in a restatement of the data), 2 %.
  expect(curve.stress(0.00115) / 472e6).toBeCloseTo(1, 1);
});

test('other grades scale by their strength: R350HT lies in the 650 to 800 MPa of handbooks', () => {
  expect(assumedProof(grade('R350HT')) / 1e6).toBeCloseTo(700.7, 1);
  expect(assumedProof(grade('AREMA intermediate'))).toBeCloseTo(724e6, 0);
  expect(assumedProof({ ...grade('R260'), name: 'trial heat' })).toBe(assumedProof(grade('R260')));
  const own = yieldCurve(grade('R260'), 600e6);
  expect(own.stress(0.002)).toBeCloseTo(600e6, 0);
});

test('every curve rises, ever more slowly, and its slope is its derivative', () => {
  for (const name of gradeNames) {
    const { stress, slope } = yieldCurve(grade(name));
    for (const strain of [0, 1e-4, 1e-3, 0.01, 0.05]) {
      const step = 1e-8;
      expect((stress(strain + step) - stress(strain)) / step / slope(strain)).toBeCloseTo(1, 4);
      expect(slope(strain * 2 + 1e-5)).toBeLessThan(slope(strain));
    }
    expect(slope(0.2)).toBeGreaterThan(0);
  }
});

test('pearlite spacing is 0.30 µm at 700 °C and 0.08 µm at 627 °C', () => {
  // From memory, low confidence, to the digits shown.
  expect(pearliteSpacing(700) * 1e6).toBeCloseTo(0.3, 2);
  expect(pearliteSpacing(627) * 1e6).toBeCloseTo(0.08, 2);
  expect(pearliteSpacing(726.9)).toBeLessThan(1e-4);
  expect(pearliteSpacing(727)).toBe(Number.POSITIVE_INFINITY);
});

test('Hyzak and Bernstein: 431, 483, 653 and 766 MPa for 0.25, 0.20, 0.11 and 0.08 µm', () => {
  const own = [0.25, 0.2, 0.11, 0.08].map((spacing) =>
    Math.round(pearliteProof({ ...usualPearlite, spacing: spacing * 1e-6 }) / 1e6),
  );
  expect(own).toEqual([431, 483, 653, 766]);
});

test('stiffness and yield fall by the EN table at every hundred degrees, and straight between', () => {
  // EN 1993-1-2 table 3.1: kE read in a text that quotes it, kp from memory; 100 … 1200 °C.
  const kE = [1, 0.9, 0.8, 0.7, 0.6, 0.31, 0.13, 0.09, 0.0675, 0.045, 0.0225, 0];
  const kp = [1, 0.807, 0.613, 0.42, 0.36, 0.18, 0.075, 0.05, 0.0375, 0.025, 0.0125, 0];
  kE.forEach((factor, i) => {
    expect(elasticModulus((i + 1) * 100) / coldModulus).toBeCloseTo(factor, 12);
    expect(yieldFactor((i + 1) * 100)).toBeCloseTo(kp[i], 12);
  });
  expect(elasticModulus(650) / coldModulus).toBeCloseTo((0.31 + 0.13) / 2, 12);
  expect(elasticModulus(1175) / coldModulus).toBeCloseTo(0.0225 / 4, 12);
  expect(yieldFactor(101)).toBeLessThan(1);
  expect(elasticModulus(20)).toBe(207e9);
  expect(elasticModulus(1250)).toBe(0);
});

test("EN's 2 % yield must not be used for stresses: tests at 0.2 % gave 0.76 at 400 °C, we stay below", () => {
  expect(yieldFactor(400)).toBeLessThan(0.76);
});
