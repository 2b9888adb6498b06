import { createHash } from 'node:crypto';
import type { Bar } from '@bloomrail/engine/bar/bar';
import { charge } from '@bloomrail/engine/bar/charge';
import { recordSchemas, writeRecord } from '@bloomrail/engine/line/records';
import { type Stop, stopsOf } from '@bloomrail/engine/line/stops';
import { must } from '@bloomrail/engine/outcome/result';
import { gradeNamed } from '@bloomrail/engine/steel/grades';
import { describe, expect, test } from 'vitest';
import { examplePlan } from '../support/examples.ts';

const plan = examplePlan('60e1-heavy-rail');
const grade = gradeNamed(plan.order.grade);
if (!grade) throw new Error('example without a known grade');

/** Every stop with the bar that reaches it. */
function walk(): { stop: Stop; bar: Bar }[] {
  const stages: { stop: Stop; bar: Bar }[] = [];
  let bar = must(charge(plan.bloom, grade as NonNullable<typeof grade>));
  for (const stop of stopsOf(plan)) {
    stages.push({ stop, bar });
    bar = must(stop.work(bar)).bar;
  }
  return stages;
}

/** Two passes by metal flow on a small mesh, a quarter and a half: each with the bar that reaches it on the line. */
function byFlow(): { stop: Stop; bar: Bar }[] {
  const passModel = { model: 'flow' as const, nodes: 120, slices: 8 };
  const stops = stopsOf({ ...plan, settings: { ...plan.settings, passModel } });
  return walked
    .map(({ bar }, i) => ({ bar, stop: { ...stops[i], code: `${stops[i].code} by metal flow` } }))
    .filter(({ stop }) => /^(B1|U1) /.test(stop.code));
}

/** A fingerprint of everything in a value, typed arrays included. */
function fingerprint(value: unknown): string {
  const hash = createHash('sha256');
  JSON.stringify(value, (_, part) => {
    if (ArrayBuffer.isView(part)) hash.update(new Uint8Array(part.buffer, part.byteOffset, part.byteLength));
    else if (typeof part === 'number') hash.update(String(part));
    return part;
  });
  return hash.digest('hex');
}

const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : value === null || typeof value !== 'object' || Object.values(value).every(finite);

const walked = walk();

describe.each([...walked, ...byFlow()].map(({ stop, bar }) => [stop.code, stop, bar] as const))(
  '%s',
  (_, stop, bar) => {
    const { bar: leaving, record } = must(stop.work(bar));

    test('leaves the bar that entered as it was', () => {
      const before = fingerprint(bar);
      stop.work(bar);
      expect(fingerprint(bar)).toBe(before);
    });

    test('gives the same answer for the same bar', () => {
      expect(fingerprint(must(stop.work(bar)))).toBe(fingerprint({ bar: leaving, record }));
    });

    test('writes a record of finite numbers that comes back from its file as it was', () => {
      expect(finite(record)).toBe(true);
      const written = JSON.parse(JSON.stringify(writeRecord(record)));
      const read = recordSchemas[record.kind].parse(written);
      expect(JSON.parse(JSON.stringify(writeRecord(read as typeof record)))).toEqual(written);
    });

    test('accounts for every kilogram, and for energy to 0.1 % of the heat in the bar', () => {
      const { massInKg, massOutKg, massLostKg, energyInJ, energyOutJ, energyGainedJ } = record.balance;
      const { unaccounted = 0, ...named } = energyGainedJ;
      const lost = Object.values(massLostKg).reduce((sum, kg) => sum + kg, 0);
      const gained = Object.values(named).reduce((sum, joule) => sum + joule, 0);
      expect(Math.abs(massInKg - massOutKg - lost) / massInKg).toBeLessThan(1e-12);
      expect(massInKg).toBeCloseTo(bar.mass, 9);
      expect(massOutKg).toBeCloseTo(leaving.mass, 9);
      const heat = Math.max(Math.abs(energyInJ), Math.abs(energyOutJ));
      expect(Math.abs(energyOutJ - energyInJ - gained) / heat).toBeLessThan(1e-3);
      expect(Math.abs(unaccounted) / heat).toBeLessThan(1e-3);
    });

    test('its pieces are as long as the bar', () => {
      expect(leaving.pieces.reduce((sum, piece) => sum + piece, 0)).toBeCloseTo(leaving.length, 9);
    });

    test('every finding is complete, and names a setting that the plan has', () => {
      for (const finding of record.findings) {
        expect(finding.text).toMatch(/\.$/);
        expect(finding.check).toMatch(/^[a-z0-9-]+$/);
        expect(`${finding.text} ${finding.advice}`).not.toMatch(/\b(error|warning|please)\b|!/i);
      }
    });
  },
);
