import { expect, test } from 'vitest';
import { z } from 'zod';
import { must } from '../outcome/result.ts';
import { outlineOf, profileNamed, profileNames } from './profile-library.ts';
import { outlineReport, SectionReport, sectionReport } from './section-report.ts';
import { moved } from './transform.ts';

const reportOf = (name: string) => {
  const profile = profileNamed(name);
  if (!profile) throw new Error(`${name} is missing`);
  return z.encode(SectionReport, must(sectionReport(profile)));
};

test('a report writes its properties under keys that carry their units', () => {
  const { profile, standard, dimensions, published, ...properties } = reportOf('60E1');
  expect(Object.keys(properties)).toEqual([
    'areaMm2',
    'massKgPerM',
    'centroidAboveFootMm',
    'inertiaXMm4',
    'inertiaYMm4',
    'modulusHeadMm3',
    'modulusFootMm3',
    'modulusLateralMm3',
    'perimeterMm',
    'torsionMm4',
  ]);
  expect([profile, standard]).toEqual(['60E1', 'EN 13674-1']);
  expect(properties.areaMm2).toBeCloseTo(7670, -1);
  expect(properties.massKgPerM).toBeCloseTo(60.21, 2);
  expect(published.length).toBeGreaterThan(0);
  expect(dimensions.find(({ name }) => name === 'headDepth')).toMatchObject({
    values: [51],
    unit: 'mm',
    status: 'published text',
  });
  expect(dimensions.find(({ name }) => name === 'crown.1.endsAt')).toMatchObject({ values: [26.0265] });
  expect(dimensions.find(({ name }) => name === 'headFilletRadii')).toMatchObject({
    values: [7, 35],
    status: 'outline fit',
  });
});

test('every profile has a report that its own schema reads back', () => {
  for (const name of profileNames) {
    const written = reportOf(name);
    expect(z.encode(SectionReport, SectionReport.parse(written))).toEqual(written);
  }
});

test('a person’s own profile lists its dimensions as given', () => {
  const profile = profileNamed('A75');
  if (!profile) throw new Error('A75 is missing');
  const report = must(sectionReport({ ...profile, name: 'own', origins: {} }));
  expect(new Set(report.dimensions.map(({ status }) => status))).toEqual(new Set(['own']));
});

test('a drawn outline has the same report wherever it stands on the sheet, without dimensions', () => {
  const profile = profileNamed('60E1');
  if (!profile) throw new Error('60E1 is missing');
  const [drawn, known] = [
    must(outlineReport('sheet 7', moved(must(outlineOf(profile)), 1, 2))),
    must(sectionReport(profile)),
  ];
  for (const key of ['area', 'centroidAboveFoot', 'inertiaX', 'modulusHead', 'perimeter'] as const) {
    expect(drawn[key] / known[key]).toBeCloseTo(1, 11);
  }
  // Another place gives another mesh; both are within 0.1 % of the constant.
  expect(drawn.torsion / known.torsion).toBeCloseTo(1, 3);
  expect(drawn.dimensions).toEqual([]);
});
