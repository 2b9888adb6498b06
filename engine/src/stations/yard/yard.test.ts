import { expect, test } from 'vitest';
import type { Bar } from '../../bar/bar.ts';
import { charge } from '../../bar/charge.ts';
import { must } from '../../outcome/result.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { type YardTask, yard } from './yard.ts';

const grade = gradeNamed('R260');
if (!grade) throw new Error('no R260');
/** A square bar of the mass per metre of 60E1, 60.21 kg/m. */
const side = Math.sqrt(60.21 / 7850);
const cold = (length: number): Bar =>
  must(charge({ height: side, width: side, cornerRadius: 0, length, charging: 20 }, grade));
const equipment = { kerf: 0.006, craneLimit: 16_000, wagonLimit: 240_000, bundleLimit: 12_000 };
const task: YardTask = {
  endCrop: 0.6,
  sampleLength: 0.3,
  railsPerBundle: 5,
  rails: [
    { length: 120, count: 4 },
    { length: 36, count: 6 },
  ],
  bloomMass: 8000,
};

test('the order is cut in full, a 120 m rail from each bar of its own', () => {
  const { record } = must(yard(cold(122), task, equipment));
  expect(record.patterns).toEqual([
    { rails: [120], bars: 4, remnant: expect.closeTo(record.usableLength - 120, 9) },
    { rails: [36, 36, 36], bars: 2, remnant: expect.any(Number) },
  ]);
  expect(record.bars).toBe(6);
});

test('ends and a test piece come off each bar, each with its cut', () => {
  const { record } = must(yard(cold(122), task, equipment));
  expect(record.usableLength).toBeCloseTo(122 - 2 * 0.6 - 0.3 - 3 * 0.006, 9);
});

test('yield is delivered rails over blooms charged', () => {
  const { record } = must(yard(cold(122), task, equipment));
  const delivered = 60.21 * (4 * 120 + 6 * 36);
  expect(record.ordered).toBeCloseTo(delivered, 6);
  expect(record.yield).toBeCloseTo(delivered / (6 * 8000), 9);
});

test('a 120 m rail of 60E1 weighs 7 225 kg and is lifted at 19 points (60.21 kg/m, RDSO guideline)', () => {
  const [bundle] = must(yard(cold(122), task, equipment)).record.bundles;
  expect(bundle.railMass).toBeCloseTo(7225, 0);
  expect(bundle.slingingPoints).toBe(19);
  expect(bundle.perBundle).toBe(1);
});

test('no bundle is heavier than crane and bundle limit while it holds more than one rail', () => {
  const { record } = must(yard(cold(122), task, equipment));
  for (const { perBundle, bundleMass } of record.bundles)
    if (perBundle > 1) expect(bundleMass).toBeLessThanOrEqual(12_000);
});

test('every kilogram is accounted for', () => {
  const { record } = must(yard(cold(122), task, equipment));
  const { massInKg, massOutKg, massLostKg } = record.balance;
  const lost = Object.values(massLostKg);
  expect(Math.min(...lost)).toBeGreaterThanOrEqual(0);
  expect(Math.abs(massInKg - massOutKg - lost.reduce((a, b) => a + b, 0)) / massInKg).toBeLessThan(1e-12);
});

test('a rail that no bar can give is said, not forgotten', () => {
  const { record } = must(yard(cold(100), task, equipment));
  expect(record.findings).toContainEqual(
    expect.objectContaining({ check: 'rail-longer-than-bar', limit: 120, stop: true }),
  );
});
