import fc from 'fast-check';
import { expect, test } from 'vitest';
import { z } from 'zod';
import light from '../../../../reference/schedules/49E1-stands.json' with { type: 'json' };
import drawings from '../../../../reference/schedules/60E1.json' with { type: 'json' };
import trial from '../../../../reference/schedules/60E1-stands.json' with { type: 'json' };
import type { Bar, Place } from '../../bar/bar.ts';
import { must } from '../../outcome/result.ts';
import { edgesOf, nearestOn } from '../../section/edges.ts';
import type { Outline } from '../../section/outline.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { sectionProperties } from '../../section/properties.ts';
import { rectangle } from '../../section/rectangle.ts';
import { mirrored } from '../../section/transform.ts';
import { triangulate } from '../../section/triangulate.ts';
import { density } from '../../steel/expansion.ts';
import type { Grade } from '../../steel/grade.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { Stand } from './equipment.ts';
import { hotRail } from './groove/finisher.ts';
import { closed } from './half-section/half-section.ts';
import { areaUnder } from './half-section/measure.ts';
import { pass } from './pass.ts';
import { prepared } from './prepare.ts';
import { PassRecord } from './record.ts';
import { PassSettings } from './settings.ts';

const stands = trial.stands.map((stand) => Stand.parse(stand));
const passes = trial.passes.map((each) => PassSettings.parse({ ...each, rhythmS: 120 }));
const standOf = ({ stand }: PassSettings): Stand => stands.find(({ code }) => code === stand) ?? stands[0];
const named = (code: string): PassSettings => passes.find((each) => each.code === code) ?? passes[0];
const grade = gradeNamed('R260') ?? must<Grade>({ ok: false, failure: { model: 'test', reason: 'no R260' } });

function barOf(outline: Outline, temperature = 1180, length = 7.5): Bar {
  const { area } = sectionProperties(outline);
  const mesh = must(triangulate(outline, { size: Math.sqrt(area / 80) }));
  const field = new Float64Array(mesh.xy.length / 2).fill(temperature);
  const at = (clock: number): Place => ({ clock, temperature: field });
  return {
    grade,
    outline,
    mesh,
    head: at(20),
    middle: at(22),
    tail: at(24),
    mass: area * length * density(temperature, grade),
    length,
    pieces: [length],
    elongation: 1,
    decarburised: 0.0005,
  };
}

const bloom = barOf(rectangle(0.28, 0.38, 0.025));
const line = () => {
  let bar = bloom;
  return passes.map((settings) => {
    const visit = must(pass(bar, settings, standOf(settings)));
    const before = bar;
    bar = visit.bar;
    return { ...visit, before, settings };
  });
};
const rolled = line();
const last = rolled[rolled.length - 1];

/**
 * Own trial design, no mill's drawing: each of its 18 passes entered with the section that its own slice model gave.
 * Accepted difference of the leaving area, %, handbook against slice model; may only fall. The spread factors of twelve
 * grooves, head, foot and edger were fitted to this same schedule: a regression guard, not a proof. B2 to B7 enter with hollow or
 * bulged sides, which the estimate evens out.
 */
const accepted: Readonly<Record<string, number>> = {
  B1: 0.3,
  B2: 2.8,
  B3: 0.3,
  B4: 0.8,
  B5: 1.6,
  B6: 1.6,
  B7: 2.1,
  K1: 0.9,
  K2: 0.3,
  F1: 0.3,
  F2: 0.3,
  F3: 1.2,
  U1: 1.0,
  E1: 0.3,
  U2: 0.6,
  U3: 1.3,
  E2: 0.8,
  UF: 0.2,
};

test.each(drawings.passes.map((row) => [row.code, row] as const))(
  '%s leaves the area of the trial schedule within its accepted difference',
  (code, row) => {
    const half = row.entryYxMm.map(([y, x]) => ({ x: x / 1e3, y: y / 1e3, bulge: 0 }));
    const settings = { ...named(code), turn: 0 as const };
    const { guide: _, ...kept } = settings;
    const made = must(prepared(barOf(closed({ vertices: half }), 1100), kept, standOf(settings)));
    const area = 2e6 * areaUnder(made.rolled.exit);
    expect(Math.abs(area / row.exitAreaMm2 - 1) * 100).toBeLessThan(accepted[code]);
  },
);

test('the trial line draws the bloom out as its slice model did, and every pass stays near it', () => {
  expect(last.bar.elongation / drawings.totalElongation).toBeCloseTo(1, 2);
  rolled.forEach(({ record }, i) => {
    // accepted difference along the whole chain, handbook against slice model
    expect(Math.abs((record.exit.area * 1e6) / drawings.passes[i].exitAreaMm2 - 1)).toBeLessThan(0.02);
  });
});

test('the finishing pass leaves the hot rail itself; only the foot keeps the width that spread gave it', () => {
  const profile = profileNamed('60E1');
  if (!profile) throw new Error('no 60E1');
  const { half } = must(hotRail(must(outlineOf(profile)), 1.013));
  const edges = edgesOf(last.record.exit.outline);
  const body = half.vertices.filter(({ y }) => y < 0.065);
  for (const { x, y } of body) expect(nearestOn(edges, x, y).distance).toBeLessThan(1e-6);
  // the trial line of the slice model came out 0.28 mm wide
  expect(Math.abs(last.record.exit.height - 0.15 * 1.013)).toBeLessThan(0.0004);
});

test('no steel is lost in a pass, and what enters in a second leaves in a second', () => {
  for (const { before, bar, record } of rolled) {
    expect(bar.mass).toBe(before.mass);
    const { entry, exit } = record;
    expect((entry.area * entry.speed) / (exit.area * exit.speed)).toBeCloseTo(1, 9);
    expect(
      sectionProperties(bar.outline).area * bar.length * density(record.places.middle.leaving.mean, grade),
    ).toBeCloseTo(bar.mass, 3);
  }
});

test('the heat of every pass is accounted for', () => {
  for (const { record } of rolled) {
    const { energyInJ, energyOutJ, energyGainedJ } = record.balance;
    const { unaccounted = 0, ...gained } = energyGainedJ;
    expect(Math.abs(unaccounted)).toBeLessThan(1e-6 * energyInJ);
    const sum = Object.values(gained).reduce((total, each) => total + each, 0);
    expect(Math.abs(energyOutJ - energyInJ - sum)).toBeLessThan(1e-6 * energyInJ);
    expect(gained.radiation).toBeLessThan(0);
    expect(gained.rolls).toBeLessThan(0);
    expect(gained.deformation).toBeGreaterThan(0);
  }
});

test('a record goes to a file and comes back', () => {
  for (const { record } of rolled) {
    const file = JSON.parse(JSON.stringify(z.encode(PassRecord, record)));
    expect(PassRecord.parse(file).elongation).toBeCloseTo(record.elongation, 12);
  }
});

test('the bar that came in is left as it was', () => {
  const copy = Array.from(bloom.middle.temperature);
  must(pass(bloom, named('B1'), standOf(named('B1'))));
  expect(Array.from(bloom.middle.temperature)).toEqual(copy);
});

test('rolled back, the tail comes first and the head has waited longest', () => {
  const { record, before } = rolled[1];
  const waits = (name: 'head' | 'tail') => record.places[name].biting.clock - before[name].clock;
  expect(record.firstEnd).toBe('tail');
  expect(waits('tail')).toBeCloseTo(named('B2').interpass, 9);
  expect(waits('head')).toBeGreaterThan(waits('tail') + record.rollingTime);
  expect(record.places.head.biting.mean).toBeLessThan(record.places.tail.biting.mean);
});

const flatten = (bar: Bar, gap: number, over: Partial<PassSettings> = {}) =>
  must(pass(bar, { ...named('B1'), gap, ...over }, standOf(named('B1')))).record;

test('a section rolled in its mirror image gives the mirror image', () => {
  // alike above and below, unlike left and right
  const half = {
    vertices: [
      { x: -0.15, y: 0, bulge: 0 },
      { x: -0.15, y: 0.1, bulge: 0 },
      { x: 0.02, y: 0.1, bulge: -0.1 },
      { x: 0.15, y: 0.08, bulge: 0 },
      { x: 0.15, y: 0, bulge: 0 },
    ],
  };
  const outline = closed(half);
  const [one, other] = [flatten(barOf(outline), 0.17), flatten(barOf(mirrored(outline)), 0.17)];
  const image = mirrored(other.exit.outline);
  const edges = edgesOf(image);
  for (const { x, y } of one.exit.outline.vertices)
    expect(nearestOn(edges, x, y).distance).toBeLessThan(1e-6);
  expect(one.places.middle.force / other.places.middle.force).toBeCloseTo(1, 4);
});

test('a colder bar and a smaller gap ask for more force', () => {
  const warm = flatten(bloom, 0.33).places.middle.force;
  expect(flatten(barOf(bloom.outline, 1080), 0.33).places.middle.force).toBeGreaterThan(warm);
  expect(flatten(bloom, 0.31).places.middle.force).toBeGreaterThan(warm);
});

test('rolls that do not reach the bar leave it as it is, and the record says so', () => {
  const record = flatten(bloom, 0.4);
  expect(record.elongation).toBeCloseTo(1, 12);
  expect(record.places.middle.force).toBe(0);
  expect(record.findings.map(({ check }) => check)).toContain('no-contact');
});

test('water on the bar takes more heat than air', () => {
  const [dry, wet] = [flatten(bloom, 0.33), flatten(bloom, 0.33, { water: true })];
  expect(wet.balance.energyGainedJ.water).toBeLessThan(0);
  expect(wet.places.middle.biting.surface).toBeLessThan(dry.places.middle.biting.surface);
});

test('a bar that is not alike above and below is refused with the reason', () => {
  const fallen = { ...named('F1'), turn: 90 as const };
  const refused = pass(rolled[9].bar, fallen, standOf(fallen));
  expect(refused.ok).toBe(false);
  if (!refused.ok) expect(refused.failure.reason).toContain('alike');
});

test('whatever the gap, the bar and its heat, there is an answer in numbers or a reason', () => {
  const codes = ['B1', 'B3', 'B5', 'K1', 'F1', 'F3', 'U1', 'E1', 'UF'];
  fc.assert(
    fc.property(
      fc.constantFrom(...codes),
      fc.double({ min: -0.03, max: 0.06, noNaN: true }),
      fc.double({ min: 0.05, max: 0.4, noNaN: true }),
      fc.double({ min: 0.05, max: 0.4, noNaN: true }),
      fc.double({ min: 600, max: 1250, noNaN: true }),
      fc.boolean(),
      (code, opened, width, height, temperature, water) => {
        const settings = { ...named(code), gap: Math.max(0.002, named(code).gap + opened), water };
        const outline = rectangle(width, height, Math.min(width, height) / 8);
        const answer = pass(barOf(outline, temperature), settings, standOf(settings));
        if (answer.ok) expect(holesIn(answer.value.record)).toEqual([]);
        else expect(answer.failure.reason.length).toBeGreaterThan(10);
      },
    ),
    { numRuns: 60, seed: 7 },
  );
});

/** Paths of numbers that are none. */
function holesIn(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) => holesIn(each, `${path}.${key}`));
}

test('the light line from a smaller bloom bites, fits and ends as 49E1 with nothing outside its limits', () => {
  const mill = light.stands.map((stand) => Stand.parse(stand));
  let bar = barOf(rectangle(0.22, 0.28, 0.025), 1180, 6);
  for (const each of light.passes) {
    const settings = PassSettings.parse({ ...each, rhythmS: 110 });
    const visit = must(pass(bar, settings, mill.find(({ code }) => code === settings.stand) ?? mill[0]));
    expect([settings.code, visit.record.findings.filter(({ level }) => level === 'outside')]).toEqual([
      settings.code,
      [],
    ]);
    bar = visit.bar;
  }
  const { bounds } = sectionProperties(bar.outline);
  // hot 49E1, foot 125 mm: the foot's width is what spread leaves, within the order's usual tolerance of 1 mm
  expect(Math.abs((bounds.top - bounds.bottom) * 1e3 - 125 * 1.013)).toBeLessThan(1);
  expect((bounds.right - bounds.left) * 1e3).toBeCloseTo(149 * 1.013, 2);
});

test('each law in the list gives the force that the stand would have if it were the law in use', () => {
  for (const code of ['B1', 'F1', 'U2', 'UF']) {
    const { before, record, settings } = rolled.find((each) => each.settings.code === code) ?? rolled[0];
    const stand = standOf(settings);
    for (const { law, force } of record.forceLaws) {
      const visit = must(pass(before, settings, { ...stand, model: { ...stand.model, forceLaw: law } }));
      expect(visit.record.places.middle.force / force).toBeCloseTo(1, 9);
    }
    expect(record.forceLaws.map(({ law }) => law)).toContain(record.forceLaw);
    expect(record.spreadLaws.map(({ law }) => law)).toContain(record.spreadLaw);
  }
});
