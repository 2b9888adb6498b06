import { expect, test } from 'vitest';
import { z } from 'zod';
import { must } from '../../outcome/result.ts';
import { furnace } from '../furnace/furnace.ts';
import { bloom, fourHours, walkingBeam } from '../furnace/walking-beam.fixture.ts';
import { coverageOf } from './coverage.ts';
import { descaler } from './descaler.ts';
import { DescalerRecord } from './record.ts';
import { atSpeed, ring } from './rings.fixture.ts';

const hot = must(furnace(bloom(), fourHours, walkingBeam)).bar;
const { bar, record } = must(descaler(hot, atSpeed, ring));
const checks = (of: DescalerRecord) =>
  of.findings.filter(({ level }) => level === 'outside').map(({ check }) => check);

test('the jets press hard enough, cover every face and cost some kelvin', () => {
  // 0.3 to 0.5 MPa for carbon steel scale; 5 to 20 K of mean loss: from memory, unconfirmed
  expect(record.impact).toBeGreaterThan(0.3e6);
  expect(record.findings).toEqual([]);
  for (const { meanBefore, meanAfter } of Object.values(record.places)) {
    expect(meanBefore - meanAfter).toBeGreaterThan(2);
    expect(meanBefore - meanAfter).toBeLessThan(20);
  }
});

test('the skin falls by hundreds of kelvin under the jets and recovers from within', () => {
  const { surfaceBefore, surfaceLowest, surfaceAfter } = record.places.head;
  expect(surfaceBefore - surfaceLowest).toBeGreaterThan(150);
  expect(surfaceAfter).toBeGreaterThan(surfaceLowest + 100);
  expect(surfaceAfter).toBeLessThan(surfaceBefore);
});

test('the tail arrives a bar length later and colder', () => {
  const { head, middle, tail } = record.places;
  expect(head.arrives).toBeCloseTo(15, 9);
  expect(tail.arrives - head.arrives).toBeCloseTo(hot.length / atSpeed.speed, 9);
  expect(middle.meanBefore).toBeLessThan(head.meanBefore);
  expect(tail.meanBefore).toBeLessThan(middle.meanBefore);
  expect(bar.tail.clock).toBeGreaterThan(bar.head.clock);
});

test('every kilogram and joule is in the ledger', () => {
  const { massInKg, massOutKg, massLostKg, energyInJ, energyOutJ, energyGainedJ } = record.balance;
  const sum = (of: Record<string, number>) => Object.values(of).reduce((total, each) => total + each, 0);
  expect(massInKg - massOutKg - sum(massLostKg)).toBeCloseTo(0, 9);
  expect(Math.abs((energyOutJ - energyInJ) / sum(energyGainedJ) - 1)).toBeLessThan(1e-9);
  expect(Math.abs((energyGainedJ.unaccounted ?? 0) / energyGainedJ.water)).toBeLessThan(1e-3);
  expect(energyGainedJ.water).toBeLessThan(0);
});

test('jets leave the share of the scale that they do not reach', () => {
  const [covered, reach] = [1, 0.95];
  expect(bar.scale).toBeCloseTo(record.scaleBefore * (1 - covered * reach), 12);
  const dry = must(descaler(hot, { ...atSpeed, pressure: atSpeed.pressure / 4 }, ring)).bar;
  expect(dry.scale).toBeGreaterThan(3 * (bar.scale ?? 0));
});

test('impact goes with the pressure, and the advice names the pressure that is enough', () => {
  const weak = must(descaler(hot, { ...atSpeed, pressure: 100e5 }, ring)).record;
  expect(weak.impact / record.impact).toBeCloseTo(100 / 220, 9);
  expect(checks(weak)).toContain('descaler-impact');
  const needed = Number(/to (\d+) bar/.exec(weak.findings[0].advice)?.[1]);
  const mended = must(descaler(hot, { ...atSpeed, pressure: needed * 1e5 + 1e5 }, ring)).record;
  expect(checks(mended)).not.toContain('descaler-impact');
});

test('a face without nozzles, too much water and a slow bar are told', () => {
  const bare = { ...ring, nozzles: { ...ring.nozzles, left: 0 } };
  expect(checks(must(descaler(hot, atSpeed, bare)).record)).toEqual(['descaler-coverage']);
  const thirsty = { ...ring, limits: { ...ring.limits, pumpFlow: 1000e-3 / 60 } };
  expect(checks(must(descaler(hot, atSpeed, thirsty)).record)).toEqual(['descaler-pump-flow']);
  expect(checks(must(descaler(hot, { ...atSpeed, speed: 0.1 }, ring)).record)).toContain(
    'descaler-mean-drop',
  );
});

test.each([
  // nozzles, footprint, pitch, width in mm, share, overlap
  [4, 100, 80, 280, 1, 20],
  [3, 100, 80, 400, 0.65, 20],
  [2, 50, 100, 300, 1 / 3, -50],
  [1, 400, 80, 300, 1, 0],
  [0, 100, 80, 300, 0, 0],
])(
  '%i jets of %i mm on a pitch of %i mm cover a face of %i mm by %f',
  (n, spray, pitch, width, share, overlap) => {
    const coverage = coverageOf(n, spray, pitch, width);
    expect(coverage.covered).toBeCloseTo(share, 12);
    expect(coverage.overlap).toBeCloseTo(overlap, 12);
  },
);

test('the record survives its file', () => {
  const back = DescalerRecord.parse(JSON.parse(JSON.stringify(z.encode(DescalerRecord, record))));
  expect(back.impact).toBeCloseTo(record.impact, 3);
  expect(back.faces).toHaveLength(4);
});
