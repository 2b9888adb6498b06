import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { smallestStrain } from '../../phenomena/metal-flow/law-steel.ts';
import { copies, loopArea } from '../../phenomena/metal-flow/quad-mesh.ts';
import { sectionProperties } from '../../section/properties.ts';
import { type CaseSteel, flowSteelOf, lawOf } from './case-steel.ts';
import { outlineOfSection } from './entering-section.ts';
import { FlowCase } from './flow-case.ts';
import { problemOf } from './problem.ts';

const folder = fileURLToPath(new URL('../../../../examples/one-pass/', import.meta.url));
const example = (name: string): FlowCase =>
  FlowCase.parse(JSON.parse(readFileSync(`${folder}${name}.json`, 'utf8')));

test.each(['box-250-to-200', 'square-to-oval', 'universal-rail', 'flat-60x60-to-48'])(
  '%s: the computed part, as often as symmetry says, is the whole section',
  (name) => {
    const given = example(name);
    const { mesh, temperature, strain } = must(problemOf(given));
    const whole = copies(mesh.symmetry) * loopArea(mesh.loop, mesh.xy);
    expect(whole).toBeCloseTo(sectionProperties(outlineOfSection(given.section)).area, 12);
    expect([temperature.length, strain.length]).toEqual([mesh.xy.length / 2, mesh.xy.length / 2]);
  },
);

test('rolls are driven by either key, or idle', () => {
  const rail = example('universal-rail');
  expect(must(problemOf(rail)).rolls.map(({ turning }) => turning)).toEqual([
    expect.closeTo(3000 / 550, 9),
    'idle',
    'idle',
  ]);
  const byRpm = FlowCase.parse({
    ...JSON.parse(readFileSync(`${folder}flat-60x60-to-48.json`, 'utf8')),
    rolls: [
      {
        name: 'top',
        side: 'top',
        axisMm: 324,
        profile: {
          shape: 'points',
          pointsMm: [
            [-99, 24],
            [99, 24],
          ],
        },
        turningRpm: 60,
        friction: 0.35,
      },
    ],
  });
  expect(must(problemOf(byRpm)).rolls[0].turning).toBeCloseTo(2 * Math.PI, 12);
});

test('heat is off unless asked for, and then carries what hot steel holds', () => {
  const given = example('flat-60x60-to-48');
  expect(must(problemOf(given)).heat).toBeUndefined();
  const heat = must(problemOf({ ...given, heat: { contact: 2e4, rollTemperature: 80 } })).heat;
  // EN 1993-1-2 at 1000 °C: 650 J/kgK and 27.3 W/mK; density from the hot factor.
  expect(heat).toMatchObject({ contact: 2e4, rollTemperature: 80, conductivity: expect.closeTo(27.3, 6) });
  expect((heat?.heatCapacity ?? 0) / 650).toBeGreaterThan(7400);
  expect((heat?.heatCapacity ?? 0) / 650).toBeLessThan(7600);
});

describe('steel', () => {
  const steel = (law: 'shida' | 'misaka', factor?: number): CaseSteel => ({
    law,
    grade: 'R260',
    temperature: 1000,
    ...(factor === undefined ? {} : { factor }),
  });
  const powerAt = (given: CaseSteel, strain: number, rate: number, T: number): number => {
    const { strength, exponent, referenceRate } = must(flowSteelOf(given));
    return strength(strain, T) * (rate / referenceRate) ** exponent(T);
  };

  test.each(['shida', 'misaka'] as const)('%s is the library’s law over the rates of rolling', (law) => {
    const handbook = must(lawOf(steel(law) as Parameters<typeof lawOf>[0]));
    for (const rate of [0.5, 3, 10, 40, 100])
      for (const T of [850, 1000, 1150])
        expect(powerAt(steel(law), 0.3, rate, T) / handbook.stress(0.3, rate, T)).toBeCloseTo(1, 12);
  });

  test('no steel starts from no stress', () => {
    for (const law of ['shida', 'misaka'] as const) {
      const at = (strain: number) => powerAt(steel(law), strain, 10, 1000);
      expect(at(0)).toBe(at(smallestStrain));
      expect(at(0) / at(0.2)).toBeGreaterThan(0.5);
      expect(at(0) / at(0.2)).toBeLessThan(0.7);
    }
  });

  test("a mill's factor multiplies, and an unknown grade has no answer", () => {
    expect(powerAt(steel('shida', 1.2), 0.3, 10, 1000) / powerAt(steel('shida'), 0.3, 10, 1000)).toBeCloseTo(
      1.2,
      12,
    );
    expect(flowSteelOf({ law: 'shida', grade: 'tin', temperature: 1000 }).ok).toBe(false);
  });

  test('a power law is the same at every strain and temperature', () => {
    const power: CaseSteel = { law: 'power', a: 100e6, b: 10, m: 0.15, temperature: 1000 };
    expect(powerAt(power, 0, 10, 20)).toBe(100e6);
    expect(powerAt(power, 1, 40, 1200)).toBeCloseTo(100e6 * 4 ** 0.15, 3);
  });
});
