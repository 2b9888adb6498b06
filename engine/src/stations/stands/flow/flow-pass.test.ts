import { expect, test } from 'vitest';
import { z } from 'zod';
import trial from '../../../../../reference/schedules/60E1-stands.json' with { type: 'json' };
import type { Bar, Place } from '../../../bar/bar.ts';
import { must } from '../../../outcome/result.ts';
import { edgesOf, nearestOn } from '../../../section/edges.ts';
import { nodeCount } from '../../../section/mesh.ts';
import type { Outline } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { mirrored, moved } from '../../../section/transform.ts';
import { triangulate } from '../../../section/triangulate.ts';
import { density } from '../../../steel/expansion.ts';
import { gradeNamed } from '../../../steel/grades.ts';
import { Stand } from '../equipment.ts';
import { rollsOf } from '../groove/rolls.ts';
import { pass } from '../pass.ts';
import { PassRecord } from '../record.ts';
import { PassSettings } from '../settings.ts';
import { computedLines } from './computed-lines.ts';

const stands = trial.stands.map((stand) => Stand.parse(stand));
const settingsOf = (code: string): PassSettings => {
  const found = trial.passes.find((each) => each.code === code);
  return { ...PassSettings.parse({ ...found, rhythmS: 120 }), model: 'flow', nodes: 90, slices: 8 };
};
const standOf = ({ stand }: PassSettings): Stand => stands.find(({ code }) => code === stand) ?? stands[0];
const grooveNamed = (name: string) => {
  const found = stands.flatMap(({ grooves }) => grooves).find((each) => each.name === name);
  if (!found) throw new Error(`no groove ${name}`);
  return found;
};
const grade = gradeNamed('R260');
if (!grade) throw new Error('no R260');

/** A bar of 7.5 m at 1180 °C; warmer at the tail by 10 K. */
function barOf(outline: Outline): Bar {
  const { area } = sectionProperties(outline);
  const mesh = must(triangulate(outline, { size: Math.sqrt(area / 60) }));
  const at = (clock: number, T: number): Place => ({
    clock,
    temperature: new Float64Array(nodeCount(mesh)).fill(T),
  });
  return {
    ...{ grade: grade as NonNullable<typeof grade>, outline, mesh },
    ...{ head: at(20, 1170), middle: at(22, 1180), tail: at(24, 1190) },
    ...{
      mass: area * 7.5 * density(1180, grade),
      length: 7.5,
      pieces: [7.5],
      elongation: 1,
      decarburised: 5e-4,
    },
  };
}

const bloom = barOf(rectangle(0.28, 0.38, 0.025));
const first = settingsOf('B1');
const stand = standOf(first);
const flat = must(pass(bloom, first, stand));

test('no steel is lost, and what enters in a second leaves in a second', () => {
  const { bar, record } = flat;
  expect(bar.mass).toBe(bloom.mass);
  expect((record.entry.area * record.entry.speed) / (record.exit.area * record.exit.speed)).toBeCloseTo(1, 9);
  const { area } = sectionProperties(bar.outline);
  expect(area * bar.length * density(record.places.middle.leaving.mean, bar.grade)).toBeCloseTo(bar.mass, 3);
  expect(record.entry.area / area).toBeCloseTo(record.elongation, 9);
});

test('the heat of a pass by metal flow is accounted for to 1e-9', () => {
  const { energyInJ, energyOutJ, energyGainedJ } = flat.record.balance;
  const { unaccounted = 0, ...gained } = energyGainedJ;
  const sum = Object.values(gained).reduce((total, each) => total + each, 0);
  expect(Math.abs(unaccounted)).toBeLessThan(1e-9 * energyInJ);
  expect(Math.abs(energyOutJ - energyInJ - sum)).toBeLessThan(1e-9 * energyInJ);
  expect(gained.rolls).toBeLessThan(0);
});

test('the bar is warmed by what the rolls put in, half of the friction left to them', () => {
  const { record } = flat;
  const { deformation, friction } = record.balance.energyGainedJ;
  const work = record.places.middle.power * record.rollingTime;
  expect((deformation + 2 * friction) / work).toBeCloseTo(1, 1);
});

test('a bar alike on both sides leaves alike on both sides', () => {
  const edges = edgesOf(mirrored(flat.bar.outline, 'x'));
  for (const { x, y } of flat.bar.outline.vertices)
    expect(nearestOn(edges, x, y).distance).toBeLessThan(1e-12);
});

test('a quarter is computed where bar and groove are alike left and right, else the half above the pass line', () => {
  const { rolls } = must(rollsOf(grooveNamed('B1'), first, { horizontal: 1.1, vertical: 0.75 }));
  expect(computedLines(bloom.outline, rolls)).toEqual({ x: 0, y: 0 });
  expect(computedLines(moved(bloom.outline, 0.01, 0), rolls)).toEqual({ y: 0 });
  const withOneMore = [...rolls, { ...rolls[0], name: 'foot roll' as const, idle: true }];
  expect(computedLines(bloom.outline, withOneMore)).toEqual({ y: 0 });
});

test('a bar beside the middle of flat rolls leaves as from the middle, its whole upper half computed', () => {
  const aside = { ...first, guide: 0.01 };
  const { record } = must(pass(bloom, aside, stand));
  expect(record.elongation / flat.record.elongation).toBeCloseTo(1, 2);
  expect(record.places.middle.force / flat.record.places.middle.force).toBeCloseTo(1, 1);
});

test('the next pass waits on the mesh of the flow, and remembers the strain it is told to', () => {
  const { bar } = flat;
  expect(bar.strain?.length).toBe(nodeCount(bar.mesh));
  const next = { ...settingsOf('B2') };
  const remembering = { ...stand, model: { ...stand.model, retainedStrain: 1 } };
  const [soft, hard] = [stand, remembering].map((each) => must(pass(bar, next, each)).record);
  expect(hard.places.middle.force).toBeGreaterThan(soft.places.middle.force);
});

test('a pull from behind lowers the force and slows the bar', () => {
  const pulled = must(pass(bloom, { ...first, entryTension: 5e6 }, stand)).record;
  expect(pulled.places.middle.force).toBeLessThan(flat.record.places.middle.force);
  expect(pulled.exit.speed).toBeLessThan(flat.record.exit.speed);
  expect(pulled.flow).toMatchObject({ entryTension: 5e6, exitTension: 0 });
  expect(flat.record.flow).toMatchObject({ entryTension: 0, exitTension: 0, power: { tension: 0 } });
  const held = pulled.entry.area * (pulled.flow?.entrySpeed ?? 0) * 5e6;
  expect((pulled.flow?.power.tension ?? 0) / -held).toBeCloseTo(1, 2);
});

test('the powers of the record leave over what it calls its error', () => {
  const { power, energyError, rolls } = flat.record.flow as NonNullable<typeof flat.record.flow>;
  const given = power.rolls + power.tension;
  expect((given - power.plastic - power.friction) / given).toBeCloseTo(energyError, 9);
  expect((2 * rolls[0].power) / power.rolls).toBeCloseTo(1, 9);
});

test('the handbook stands beside the flow, and measures say which of them they are', () => {
  const { record } = flat;
  const handbook = must(pass(bloom, { ...first, model: 'handbook' }, stand)).record;
  expect(record.flow?.handbook.elongation).toBeCloseTo(handbook.elongation, 9);
  expect(record.forceLaws.map(({ law }) => law)).toEqual(handbook.forceLaws.map(({ law }) => law));
  expect(record.measures.find(({ name }) => name === 'force')?.law).toContain('metal flow');
  expect(handbook.flow).toBeUndefined();
});

test('a record by metal flow goes to a file and comes back', () => {
  const written = JSON.parse(JSON.stringify(z.encode(PassRecord, flat.record)));
  expect(JSON.parse(JSON.stringify(z.encode(PassRecord, PassRecord.parse(written))))).toEqual(written);
  expect(JSON.stringify(written.flow.sections).length).toBeLessThan(150e3);
});

test('points of the skin follow each other in every section', () => {
  for (const { x, y } of flat.record.flow?.sections ?? []) {
    const steps = x.slice(1).map((each, i) => Math.hypot(each - x[i], y[i + 1] - y[i]));
    expect(Math.max(...steps)).toBeLessThan(0.1);
  }
});

test('rolls that skid are a failure with the pass named; no handbook stands in', () => {
  const slippery = { ...stand, friction: 0.1 };
  const refused = pass(bloom, { ...first, gap: 0.25 }, slippery);
  expect(refused.ok).toBe(false);
  if (!refused.ok) expect(refused.failure.reason).toMatch(/^pass B1: /);
});

test('rolls that do not reach the bar leave section, mesh and strain as they were', () => {
  const { bar, record } = must(pass(flat.bar, { ...first, gap: 0.4 }, stand));
  expect(record.findings.map(({ check }) => check)).toContain('no-contact');
  expect(record.elongation).toBe(1);
  expect(sectionProperties(bar.outline).area).toBeCloseTo(record.entry.area, 12);
  expect(bar.strain).toBe(flat.bar.strain);
});

test('a bar wider than its groove is named before the pass, also where the pass fails', () => {
  const wide = { ...settingsOf('F1'), guide: 0.0915 };
  const answer = pass(barOf(rectangle(0.25, 0.16, 0.02)), wide, standOf(wide));
  const said = answer.ok
    ? answer.value.record.findings.map(({ text }) => text).join(' ')
    : answer.failure.reason;
  expect(said).toContain('wall of groove F1');
});

test('the bar that came in is left as it was', () => {
  const copy = JSON.stringify([bloom.outline, [...bloom.mesh.xy], [...bloom.middle.temperature]]);
  must(pass(bloom, first, stand));
  expect(JSON.stringify([bloom.outline, [...bloom.mesh.xy], [...bloom.middle.temperature]])).toBe(copy);
});
