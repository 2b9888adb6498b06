import { beforeAll, expect, test } from 'vitest';
import type { Bar } from '../../bar/bar.ts';
import { must } from '../../outcome/result.ts';
import { curvatureOut, straighten } from '../../phenomena/bending/straighten.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { sectionProperties } from '../../section/properties.ts';
import { triangulate } from '../../section/triangulate.ts';
import { gradeNamed } from '../../steel/grades.ts';
import type { StraightenersEquipment } from './equipment.ts';
import { machinesOf } from './machine.ts';
import { searchBothOffsets } from './search-both-offsets.ts';
import { searchOffsets } from './search-offsets.ts';
import type { StraightenersSettings } from './settings.ts';
import { sectionOf, straighteners } from './straighteners.ts';

/** Nine rollers at 1600 mm and eight at 900 mm: a machine that a supplier has described. Ratings from memory. */
const equipment: StraightenersEquipment = {
  height: { rollers: 9, pitch: 1.6, diameter: 1.1, force: 4e6, power: 800e3 },
  side: { rollers: 8, pitch: 0.9, diameter: 0.7, force: 1.5e6, power: 400e3 },
};
const settings: StraightenersSettings = {
  heightOffsets: [0.0407, 0.033, 0.0236, 0.0054],
  heightLast: 0,
  sideOffsets: [0.0156, 0.0122, 0.0079, -0.0004],
  speed: 1.2,
  heightSpread: 1e-3,
  sideSpread: 0.5e-3,
  straightness: 'A',
};

/** A cold 60E1 with a hollow head and a zig-zag of stress as a bed leaves it. */
function coldBar(height = -1e-3, side = 0.4e-3): Bar {
  const grade = gradeNamed('R260');
  const profile = profileNamed('60E1');
  if (!grade || !profile) throw new Error('60E1 in R260 expected in the library');
  const outline = must(outlineOf(profile));
  const mesh = must(triangulate(outline, { size: 0.0065, smallest: 0.0026 }));
  const nodes = mesh.xy.length / 2;
  const place = { clock: 9000, temperature: new Float64Array(nodes).fill(60) };
  const cold = {
    heightCurvature: height,
    sideCurvature: side,
    stress: new Float64Array(nodes),
    pearlite: new Float64Array(nodes).fill(1),
  };
  const mass = 7850 * sectionProperties(outline).area * 100;
  const frame = { grade, outline, mesh, mass, length: 100, pieces: [100], elongation: 13, decarburised: 0 };
  return { ...frame, head: place, middle: place, tail: place, cold };
}

let bar: Bar;
let usual: ReturnType<typeof run>;
const run = (change: Partial<StraightenersSettings> = {}, built = equipment, each = bar) =>
  must(straighteners(each, { ...settings, ...change }, built));
beforeAll(() => {
  bar = coldBar();
  usual = run();
});

test('the work of bending is the heat that the bar gains, and mass stays', () => {
  const { balance } = usual.record;
  const { deformation, unaccounted = 0 } = balance.energyGainedJ;
  expect(balance.massOutKg).toBe(balance.massInKg);
  expect(deformation).toBeGreaterThan(0);
  expect(Math.abs(unaccounted) / balance.energyInJ).toBeLessThan(1e-9);
  expect(usual.bar.middle.temperature[0] - 60).toBeGreaterThan(0.2);
  expect(usual.bar.middle.temperature[0] - 60).toBeLessThan(10);
});

test('the bar is through when its tail is: length over speed later', () => {
  for (const place of ['head', 'middle', 'tail'] as const) {
    expect(usual.bar[place].clock - bar[place].clock).toBeCloseTo(100 / 1.2, 9);
    expect(usual.record.leaving.places[place].clock).toBe(usual.bar[place].clock);
  }
});

test('nine rollers at 1600 mm bend a 60E1 to 70 to 85 % first and to less than half at the end', () => {
  // Practice, from memory: 70 to 85 % at the first two triangles, 10 to 30 % at the exit.
  const { rollers } = usual.record.height;
  const most = Math.max(...rollers.map(({ plastified }) => plastified));
  expect(most).toBeGreaterThan(0.7);
  expect(most).toBeLessThan(0.85);
  expect(rollers[7].plastified).toBeLessThan(0.55);
});

test('forces stay far below the rating and every force presses', () => {
  for (const machine of [usual.record.height, usual.record.side]) {
    for (const { force, touches } of machine.rollers) {
      expect(touches).toBe(true);
      expect(force).toBeGreaterThan(0);
      expect(force).toBeLessThan(1e6);
    }
  }
});

test('moments turn sign from roller to roller and vanish at both ends', () => {
  const { rollers } = usual.record.height;
  expect(rollers[0].moment).toBe(0);
  expect(rollers[8].moment).toBe(0);
  rollers.slice(1, -1).forEach(({ moment }, i) => {
    expect(Math.sign(moment)).toBe(i % 2 ? 1 : -1);
  });
});

test('the second machine takes over the camber that the first one left', () => {
  const { height, side, heightCurvature } = usual.record;
  expect(height.curvatureIn).toBeCloseTo(-1e-3, 9);
  expect(height.curvatureOut).not.toBeCloseTo(heightCurvature, 5);
  expect(side.curvatureIn).toBeCloseTo(0.4e-3, 6);
  expect(usual.bar.cold?.heightCurvature).toBe(heightCurvature);
  expect(usual.bar.cold?.sideCurvature).toBe(usual.record.sideCurvature);
});

test('stress that leaves is self-balanced and its pattern is the zig-zag of bending', () => {
  const { stress } = usual.record;
  expect(Math.max(...stress)).toBeGreaterThan(40e6);
  expect(Math.min(...stress)).toBeLessThan(-40e6);
  // Bending alone leaves the foot centre below 100 MPa; published machines with contact leave more than 128 MPa.
  expect(Math.abs(usual.record.footStress)).toBeLessThan(100e6);
  expect(usual.record.findings.map(({ check }) => check)).toContain('bending-part-only');
});

test('ends of two pitches stay as they came, and a piece that is all end is found', () => {
  expect(usual.record.height.unstraightenedEnd).toBeCloseTo(3.2, 12);
  expect(usual.record.side.unstraightenedEnd).toBeCloseTo(1.8, 12);
  const short = run({}, equipment, { ...bar, pieces: [94, 6] });
  expect(short.record.findings.map(({ check }) => check)).toContain('piece-without-straight-part');
});

test('following the advice brings the middle of the range to straight', () => {
  // Roller 8 is 0.2 mm off; advice is a local slope, a tenth of the miss may stay.
  const off = { heightOffsets: [0.0407, 0.033, 0.0236, 0.0056] };
  const before = run(off).record;
  const finding = before.findings.find(({ check }) => check === 'flatness-height');
  const [, way, roller, change] =
    /(Press|Take) roller (\d+) \w+ by ([\d.]+) mm/.exec(finding?.advice ?? '') ?? [];
  expect(finding?.setting).toBe(`settings.straighteners.heightOffsetsMm.${Number(roller) / 2 - 1}`);
  const heightOffsets = off.heightOffsets.map((each, i) =>
    i === Number(roller) / 2 - 1 ? each + ((way === 'Press' ? 1 : -1) * Number(change)) / 1e3 : each,
  );
  const after = run({ heightOffsets }).record;
  const middle = ({ heightLow, heightHigh }: typeof before) => (heightLow + heightHigh) / 2;
  expect(Math.abs(middle(before))).toBeGreaterThan(2e-4);
  expect(Math.abs(middle(after))).toBeLessThan(0.2 * Math.abs(middle(before)));
});

test('offsets that hardly bend give no advice of metres, but to set a new taper', () => {
  const { findings } = run({
    heightOffsets: [0.012, 0.009, 0.006, 0.003],
    sideOffsets: [0.005, 0.004, 0.0025, 0.001],
    heightSpread: 0,
    sideSpread: 0,
  }).record;
  const about = findings.filter(({ check }) => check === 'flatness-height');
  expect(about).toHaveLength(1);
  expect(about[0].advice).toMatch(/within 2 mm: set all offsets anew/);
});

test('a weak machine is found with the roller to take back', () => {
  const weak = { ...equipment, height: { ...equipment.height, force: 400e3, power: 20e3 } };
  const found = run({}, weak).record.findings.filter(({ level }) => level === 'outside');
  expect(found.map(({ check }) => check)).toEqual(
    expect.arrayContaining(['roller-force-height', 'straightener-power-height']),
  );
});

test('a bar that has not been on the bed gets no answer', () => {
  const { cold, ...never } = bar;
  expect(cold).toBeDefined();
  expect(straighteners(never, settings, equipment).ok).toBe(false);
});

test('offsets are found that let the middle of the spread leave straight within force and depth', () => {
  const section = must(sectionOf(bar));
  const wish = {
    plane: 'height' as const,
    machine: equipment.height,
    spread: 2e-3,
    target: 0,
    mostPlastified: 0.85,
  };
  const found = must(searchOffsets(section, wish));
  expect(Math.abs(found.out[1])).toBeLessThan(1e-6);
  expect(found.out[2] - found.out[0]).toBeLessThan(0.6e-3);
  expect(found.plastified).toBeLessThan(0.86);
  expect(found.force).toBeLessThan(4e6);
  const again = must(
    straighten(section, machinesOf({ ...settings, heightOffsets: found.offsets }, equipment).height.line),
  );
  expect(Math.abs(curvatureOut(again))).toBeLessThan(2e-6);
});

test('offsets of both machines together let the bar leave straight in both planes, in class A over the spread', () => {
  const wish = { heightSpread: 1e-3, sideSpread: 0.5e-3, mostPlastified: 0.85 };
  const { height, side } = must(searchBothOffsets(must(sectionOf(bar)), equipment, wish));
  const { record } = run({ heightOffsets: height.offsets, sideOffsets: side.offsets });
  expect(Math.abs(record.heightCurvature)).toBeLessThan(1e-5);
  expect(Math.abs(record.sideCurvature)).toBeLessThan(1e-5);
  expect(record.flatness3m).toBeLessThan(0.3e-3);
  expect(record.flatnessSide).toBeLessThan(0.45e-3);
});
