import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Bar } from '../../bar/bar.ts';
import { charge } from '../../bar/charge.ts';
import { must } from '../../outcome/result.ts';
import { hotFactor } from '../../steel/expansion.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { saws } from './saws.ts';

const grade = gradeNamed('R260');
if (!grade) throw new Error('no R260');
const hot = (length: number): Bar =>
  must(charge({ height: 0.1, width: 0.08, cornerRadius: 0.005, length, charging: 900 }, grade));
const equipment = { kerf: 0.009, cutTime: 6, longestPiece: 126 };
const settings = { headCrop: 0.6, tailCrop: 0.8, samples: 1, sampleLength: 0.5, coldLengths: [60, 48] };

test('crops, test pieces, kerfs, pieces and remainder add up to the bar as rolled', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 140, noNaN: true }),
      fc.array(fc.double({ min: 6, max: 130, noNaN: true }), { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 0, max: 4 }),
      (length, coldLengths, samples) => {
        const bar = hot(length);
        const { record } = must(saws(bar, { ...settings, coldLengths, samples }, equipment));
        const parts = [
          record.headCrop,
          record.tailCrop,
          record.samples,
          record.kerfs,
          record.remainder,
          ...record.hotPieces,
        ];
        expect(parts.reduce((a, b) => a + b, 0)).toBeCloseTo(bar.length, 9);
        expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
        const lost = Object.values(record.balance.massLostKg).reduce((a, b) => a + b, 0);
        expect(Math.abs(bar.mass - record.leaving.mass - lost) / bar.mass).toBeLessThan(1e-12);
      },
    ),
    { seed: 11, numRuns: 200 },
  );
});

test('a piece that is cut hot has the wanted length when cold', () => {
  const { record } = must(saws(hot(115), settings, equipment));
  const growth = hotFactor(grade, 900);
  expect(record.hotPieces).toEqual([expect.closeTo(60 * growth, 9), expect.closeTo(48 * growth, 9)]);
  expect(record.coldPieces).toEqual([expect.closeTo(60, 9), expect.closeTo(48, 9)]);
});

test('a rail of 120 m shrinks by 1.2 to 1.4 % from 900 °C (common practice, no source)', () => {
  const { record } = must(saws(hot(115), settings, equipment));
  expect(record.shrinkage).toBeGreaterThan(0.011);
  expect(record.shrinkage).toBeLessThan(0.0145);
});

test('a bar that is too short is cut as long as it gets, and the finding says how much bloom is missing', () => {
  const { record } = must(saws(hot(100), settings, equipment));
  expect(record.coldPieces[1]).toBeLessThan(48);
  expect(record.findings).toContainEqual(
    expect.objectContaining({ check: 'bar-too-short', stop: true, unit: 'm', limit: 108 }),
  );
});

test('a piece longer than the bed is not sent there in silence', () => {
  const { record } = must(saws(hot(140), { ...settings, coldLengths: [128] }, equipment));
  expect(record.findings.map(({ check }) => check)).toContain('piece-longer-than-bed');
});

test('the heat that leaves with crops is what they carry', () => {
  const { record } = must(saws(hot(115), settings, equipment));
  const { energyInJ, energyOutJ, energyGainedJ } = record.balance;
  expect(energyGainedJ).toEqual({ leftWithMass: energyOutJ - energyInJ });
  expect(energyOutJ / energyInJ).toBeCloseTo(record.leaving.length / record.lengthIn, 12);
});

test('a bar that is all crop, or of which nothing is wanted, has no answer', () => {
  for (const [length, coldLengths] of [
    [1, [60]],
    [115, []],
  ] as const) {
    const result = saws(hot(length), { ...settings, coldLengths }, equipment);
    expect(result).toMatchObject({ ok: false, failure: { model: 'hot saw' } });
  }
});
