import { expect, test } from 'vitest';
import { gradeNamed, gradeNames } from './grades.ts';

const grade = (name: string) => {
  const found = gradeNamed(name);
  if (!found) throw new Error(`no grade ${name}`);
  return found;
};

test('the nine grades of EN 13674-1 and three of AREMA are known by name, and no other', () => {
  expect(gradeNames).toEqual([
    ...['R200', 'R220', 'R260', 'R260Mn', 'R320Cr', 'R350HT', 'R350LHT', 'R370CrHT', 'R400HT'],
    ...['AREMA standard', 'AREMA intermediate', 'AREMA high strength'],
  ]);
  expect(gradeNamed('R999')).toBeUndefined();
});

test('R260 has the analysis, hardness and strength of the tables', () => {
  const r260 = grade('R260');
  expect(r260.ranges.C).toEqual([0.62, 0.8]);
  expect(r260.composition.C).toBeCloseTo(0.71, 12);
  expect(r260.composition.Mn).toBeCloseTo(0.95, 12);
  expect(r260.hardness).toEqual({ low: 260, high: 300 });
  expect(r260.tensile).toBeCloseTo(880e6, 0);
  expect(r260.elongation).toBeCloseTo(0.1, 12);
  expect(r260.decarburisationLimit).toBeCloseTo(0.5e-3, 12);
  expect(r260.footStressLimit).toBeCloseTo(250e6, 0);
});

test('AREMA asks for a proof stress and names no upper hardness; EN names no proof stress', () => {
  expect(grade('AREMA high strength')).toMatchObject({
    proof: 827e6,
    tensile: 1179e6,
    hardness: { low: 370 },
  });
  expect(grade('AREMA high strength').hardness.high).toBeUndefined();
  expect(grade('R350HT').proof).toBeUndefined();
});

test('in every grade ranges rise, middles lie inside, strength grows with hardness, and sources are in words', () => {
  for (const name of gradeNames) {
    const { ranges, composition, hardness, tensile, sources } = grade(name);
    for (const element of ['C', 'Si', 'Mn', 'P', 'S', 'Cr', 'V'] as const) {
      expect(ranges[element][0]).toBeLessThan(ranges[element][1]);
      expect(composition[element]).toBeCloseTo((ranges[element][0] + ranges[element][1]) / 2, 12);
    }
    // Pearlitic steels: the least Rm is 3.0 to 3.5 MPa per least HBW (common practice, no source).
    expect(tensile / 1e6 / hardness.low).toBeGreaterThan(3.0);
    expect(tensile / 1e6 / hardness.low).toBeLessThan(3.51);
    for (const what of ['composition', 'hardness', 'tensile', 'elongation'])
      expect(sources[what], `${name} ${what}`).toMatch(/read in|memory|assumed/);
  }
});
