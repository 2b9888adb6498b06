import { beforeAll, expect, test } from 'vitest';
import type { Bar } from '../../bar/bar.ts';
import { must } from '../../outcome/result.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { sectionProperties } from '../../section/properties.ts';
import { scaled, turned } from '../../section/transform.ts';
import { triangulate } from '../../section/triangulate.ts';
import { density, hotFactor } from '../../steel/expansion.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { coolingBed } from './cooling-bed.ts';
import { turningPoints } from './course.ts';
import type { CoolingBedEquipment } from './equipment.ts';
import { meshedForBed } from './lying-bar.ts';
import type { CoolingBedSettings } from './settings.ts';

const settings: CoolingBedSettings = {
  pose: 'on-side',
  pitch: 0.26,
  rhythm: 120,
  runOut: 40,
  transfer: 20,
  air: 20,
  preCamber: 0,
  leaveBelow: 80,
  support: 'free',
};
const equipment: CoolingBedEquipment = {
  travel: 20,
  barLength: 110,
  friction: 0.3,
  emissivity: 0.8,
  camberLimit: 4e-3,
  camberDoubt: 1e-3,
};

/** A 100 m bar of 60E1 as the last pass leaves it: hot, lying, foot at x = 0. */
function hotBar(temperature = 950, size = 0.0065): Bar {
  const grade = gradeNamed('R260');
  const profile = profileNamed('60E1');
  if (!grade || !profile) throw new Error('60E1 in R260 expected in the library');
  const outline = scaled(turned(must(outlineOf(profile)), -Math.PI / 2), hotFactor(grade, temperature));
  const mesh = must(triangulate(outline, { size, smallest: size / 2.5 }));
  const place = { clock: 900, temperature: new Float64Array(mesh.xy.length / 2).fill(temperature) };
  const colder = { clock: 920, temperature: place.temperature.map((T) => T - 30) };
  const mass = density(temperature, grade) * sectionProperties(outline).area * 100;
  const frame = {
    grade,
    outline,
    mesh,
    mass,
    length: 100,
    pieces: [60, 40],
    elongation: 13,
    decarburised: 0,
  };
  return { ...frame, head: place, middle: place, tail: colder };
}

const run = (bar: Bar, change: Partial<CoolingBedSettings> = {}) =>
  must(coolingBed(bar, { ...settings, ...change }, equipment));

let usual: ReturnType<typeof run>;
beforeAll(() => {
  usual = run(hotBar());
});

test('mass stays, and what heat is lost has left by radiation and convection', () => {
  const { balance } = usual.record;
  const { radiation, convection, lag, unaccounted = 0 } = balance.energyGainedJ;
  expect(balance.massOutKg).toBe(balance.massInKg);
  expect(radiation).toBeLessThan(convection);
  expect(convection).toBeLessThan(0);
  expect(Math.abs(lag) / balance.energyInJ).toBeLessThan(1e-6);
  // A whole cooling run is asked to close to 0.25 %; the ledger itself to 0.1 %.
  expect(Math.abs(unaccounted) / balance.energyInJ).toBeLessThan(1e-4);
});

test('the foot tip cools first, then the web, the head last', () => {
  for (const { head, web, footTip, mean } of usual.record.coolingTimes) {
    if (head === undefined || web === undefined || footTip === undefined || mean === undefined) continue;
    expect(footTip).toBeLessThan(web);
    expect(web).toBeLessThan(mean);
    expect(mean).toBeLessThan(head);
  }
});

test('a 60E1 from 950 °C passes 600, 400 and 100 °C about when an independent computation has it', () => {
  // Trial computation of the same case in plain arrays, never compared with a rail: head 826/1679/7159 s, web
  // 552/1440/6931, foot tip 369/1207/6662. 15 % for other laws of steel and the place of the points in the section.
  const expected = [
    [826, 552, 369],
    [1679, 1440, 1207],
    [7159, 6931, 6662],
  ];
  expected.forEach(([head, web, footTip], row) => {
    const got = usual.record.coolingTimes[row];
    expect(Math.abs((got.head ?? 0) / head - 1)).toBeLessThan(0.15);
    expect(Math.abs((got.web ?? 0) / web - 1)).toBeLessThan(0.15);
    expect(Math.abs((got.footTip ?? 0) / footTip - 1)).toBeLessThan(0.25);
  });
});

test('the bar bends head outside, swings back, swings again and ends with a hollow head', () => {
  // Order of events: foot leads, foot changes and swells, head changes and swells, head shrinks last (handbook accounts).
  const { heightCamber, time, reversals, finalHeightCamber, finalRise } = usual.record;
  const lowest = Math.min(...heightCamber);
  const at = time[heightCamber.indexOf(lowest)];
  expect(reversals).toBe(3);
  expect(Math.max(...heightCamber.slice(0, heightCamber.indexOf(lowest)))).toBeGreaterThan(1e-3);
  expect(at).toBeGreaterThan(200);
  expect(at).toBeLessThan(450);
  expect(finalHeightCamber).toBeLessThan(0);
  // 1 to 3 m of rise on 100 m are reported for free rails, from memory.
  const per100m = (Math.abs(finalHeightCamber) * 100 ** 2) / 8;
  expect(per100m).toBeGreaterThan(1);
  expect(per100m).toBeLessThan(3);
  expect(finalRise).toBeLessThan(0);
});

test('the pre-camber it names makes a free bar leave straight', () => {
  const { preRiseForStraight, finalHeightCamber } = usual.record;
  expect(preRiseForStraight).toBeGreaterThan(0);
  const bent = run(hotBar(), { preCamber: preRiseForStraight });
  expect(Math.abs(finalHeightCamber)).toBeGreaterThan(5e-4);
  expect(Math.abs(bent.record.finalHeightCamber)).toBeLessThan(1e-6);
  expect(bent.bar.cold?.heightCurvature).toBe(bent.record.finalHeightCamber);
});

test('friction holds the middle nearly straight and leaves hooks at the ends', () => {
  const { record } = run(hotBar(), { support: 'friction' });
  expect(Math.max(...record.heightCamber.map(Math.abs))).toBeLessThan(
    0.5 * Math.max(...usual.record.heightCamber.map(Math.abs)),
  );
  expect(record.hookLength).toBeGreaterThan(3);
  expect(record.hookLength).toBeLessThan(30);
  expect(usual.record.hookLength).toBe(0);
});

test('all is pearlite long before martensite could form', () => {
  expect(usual.record.pearliteLeast).toBeGreaterThan(0.999);
  expect(Math.min(...(usual.bar.cold?.pearlite ?? [0]))).toBeGreaterThan(0.999);
  expect(usual.record.findings.map(({ check }) => check)).not.toContain('martensite');
});

test('the bar leaves upright, shorter by 1.2 %, cool and with its pieces', () => {
  const { bar, record } = usual;
  const { bounds, area } = sectionProperties(bar.outline);
  expect(bounds.bottom).toBeCloseTo(0, 12);
  expect(bounds.top * 1e3).toBeCloseTo(172.1, 0);
  expect(bounds.left).toBeCloseTo(-bounds.right, 9);
  expect(record.coldLength / record.hotLength).toBeGreaterThan(0.985);
  expect(record.coldLength / record.hotLength).toBeLessThan(0.991);
  expect(bar.pieces[0] + bar.pieces[1]).toBeCloseTo(bar.length, 9);
  expect(Math.abs((density(75, bar.grade) * area * bar.length) / bar.mass - 1)).toBeLessThan(1e-3);
  expect(Math.max(...bar.middle.temperature)).toBeLessThanOrEqual(80.2);
  expect(bar.tail.temperature[0]).toBeLessThan(bar.middle.temperature[0]);
  expect(bar.middle.temperature[0] - bar.tail.temperature[0]).toBeLessThan(1);
});

test('stress on the bed balances and is below 200 MPa', () => {
  const { bar, record } = usual;
  const sum = record.stress.reduce((total, each) => total + each, 0) / record.stress.length;
  expect(Math.max(...record.stress.map(Math.abs))).toBeLessThan(200e6);
  expect(Math.max(...record.stress)).toBeGreaterThan(20e6);
  expect(Math.abs(sum)).toBeLessThan(30e6);
  expect(bar.cold?.stress.length).toBe(bar.mesh.xy.length / 2);
});

test('a finer mesh moves the final camber by less than 0.05 per km', () => {
  const finer = run(hotBar(950, 0.0052));
  expect(finer.record.nodeX.length).toBeGreaterThan(1.3 * usual.record.nodeX.length);
  expect(Math.abs(finer.record.finalHeightCamber - usual.record.finalHeightCamber)).toBeLessThan(5e-5);
});

test('a standing rail that is hotter on one side bends to that side, the mirrored one to the other', () => {
  const bar = hotBar();
  const aslant = (gradient: number): Bar => {
    const temperature = bar.middle.temperature as Float64Array;
    const place = {
      ...bar.middle,
      temperature: temperature.map((T, i) => T + gradient * bar.mesh.xy[2 * i + 1]),
    };
    return { ...bar, middle: place };
  };
  const [one, other] = [150, -150].map((gradient) => run(aslant(gradient), { pose: 'standing' }).record);
  expect(Math.abs(one.finalSideCamber)).toBeGreaterThan(2e-4);
  // The rays of the view factors are not mirrored: 0.02 per km.
  expect(Math.abs(one.finalSideCamber + other.finalSideCamber)).toBeLessThan(2e-5);
  expect(Math.abs(one.finalHeightCamber - other.finalHeightCamber)).toBeLessThan(2e-5);
});

test('a bar with an unsuitable mesh is meshed anew and keeps its heat', () => {
  const bar = hotBar(950, 0.02);
  const gradual = {
    ...bar.middle,
    temperature: Array.from(bar.middle.temperature).map((T, i) => T - 40 * bar.mesh.xy[2 * i]),
  };
  const { bar: made, correction } = must(meshedForBed({ ...bar, middle: gradual }));
  expect(made.mesh.xy.length / 2).toBeGreaterThan(240);
  expect(correction).toBeLessThan(2);
});

test('too fast a pace and too long a bar are found', () => {
  const { record } = must(
    coolingBed(hotBar(), { ...settings, rhythm: 60 }, { ...equipment, barLength: 50, camberLimit: 0.5e-3 }),
  );
  const found = record.findings.filter(({ level }) => level === 'outside').map(({ check }) => check);
  expect(found).toEqual(['bed-camber', 'bed-time', 'bar-longer-than-bed']);
});

test('turning points count swings beyond a threshold', () => {
  expect(turningPoints([0, 3, -11, 9, -1], 0.5)).toBe(3);
  expect(turningPoints([0, 1, 2, 3], 0.5)).toBe(0);
  expect(turningPoints([0, 1, 0.9, 2, 1.8, 3], 0.5)).toBe(0);
});

test('a bar that was held on the bed shows in its last row how it bends once it is let go', () => {
  const { heightCamber, time, finalHeightCamber } = usual.record;
  expect(heightCamber).toHaveLength(time.length);
  expect(heightCamber[heightCamber.length - 1]).toBe(finalHeightCamber);
  expect(time[time.length - 1]).toBe(time[time.length - 2]);
});
