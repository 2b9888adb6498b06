import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import type { Grade } from '../../steel/grade.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { yieldCurve } from '../../steel/yield-curve.ts';
import { passingThreeRollers } from './closed-forms.ts';
import { coldSection, firstYield, stressOf } from './cold-section.ts';
import { overlap } from './contact.ts';
import { type Fibres, fibres, layeredRectangle } from './fibres.ts';
import { overlayOf, perfectlyPlastic } from './overlay.ts';
import { rollerLine } from './rollers.ts';
import { curvatureOut, offsetSensitivity, straighten } from './straighten.ts';
import { yieldedAlong } from './yielded.ts';

const ideal = perfectlyPlastic(200e9, 240e6);
const rail = overlayOf(yieldCurve(gradeNamed('R260') as Grade));
const square = layeredRectangle(0.1, 0.1, 80);
const squareYield = { curvature: 240e6 / 200e9 / 0.05, moment: (240e6 * 0.1 ** 3) / 6 };
/** Nine rollers at 1.6 m that bend a section like a rail's to 1.9 times first yield. */
const offsets = [0.0407, 0.033, 0.0236, 0.0054];

test('three rollers bend a passing bar to the moment and leave the curvature of the plastic closed form', () => {
  // Closed form by hand (`passingThreeRollers`): moment 0.1 %, curvature that leaves 1 % (8 steps per span).
  for (const moment of [1.1, 1.2, 1.4]) {
    const exact = passingThreeRollers(moment);
    const line = rollerLine('height', 3, 1, [exact.offset * squareYield.curvature]);
    const solved = must(straighten(coldSection(square, ideal), line));
    expect(Math.abs(-solved.moment[1] / squareYield.moment / moment - 1)).toBeLessThan(1e-3);
    expect(Math.abs(-curvatureOut(solved) / squareYield.curvature / exact.exitBend - 1)).toBeLessThan(0.01);
  }
});

test('below first yield the bar leaves as it came and the forces are those of an elastic beam', () => {
  const line = rollerLine('height', 3, 1, [0.3 * squareYield.curvature]);
  const solved = must(straighten(coldSection(square, ideal), line));
  const inertia = Array.from(square.y).reduce((sum: number, y, i) => sum + square.area[i] * y * y, 0);
  const force = (0.3 * squareYield.curvature * 48 * 200e9 * inertia) / 2 ** 3;
  // The kink asked, 0.014 rad, is met to 1e-8.
  expect(Math.abs(solved.press[1] / force - 1)).toBeLessThan(2e-6);
  expect(Math.abs(curvatureOut(solved))).toBeLessThan(1e-12);
  expect(yieldedAlong(coldSection(square, ideal), line, solved).work).toBeCloseTo(0, 6);
});

test('rollers on one line with a straight bar between them press with nothing', () => {
  const solved = must(straighten(coldSection(railLike(), rail), rollerLine('height', 9, 1.6, [0, 0, 0, 0])));
  expect(Math.max(...Array.from(solved.press).map(Math.abs))).toBeLessThan(1e-3);
});

test('roller forces balance up against down, and their moments about roller 1', () => {
  const line = rollerLine('height', 9, 1.6, offsets);
  const { press } = must(straighten(coldSection(railLike(), rail, undefined, [-1.45e-3, 0]), line));
  const down = Array.from(press).reduce((sum, force, i) => sum + (i % 2 ? force : -force), 0);
  const turn = Array.from(press).reduce(
    (sum, force, i) => sum + (i % 2 ? force : -force) * line.position[i],
    0,
  );
  expect(Math.abs(down) / Math.max(...press)).toBeLessThan(1e-12);
  expect(Math.abs(turn) / Math.max(...press)).toBeLessThan(1e-11);
});

test('a bar mirrored left to right leaves with the mirrored side camber and the same height camber', () => {
  const section = railLike();
  const lopsided = Float64Array.from(section.x, (x, i) => 4e8 * x * Math.sin(i >> 1));
  const mirrored = lopsided.map((each) => -each);
  const line = rollerLine('height', 9, 1.6, offsets);
  const [one, other] = [
    must(straighten(coldSection(section, rail, lopsided, [-1.45e-3, 0.4e-3]), line)),
    must(straighten(coldSection(section, rail, mirrored, [-1.45e-3, -0.4e-3]), line)),
  ];
  expect(one.section.strain[1]).toBeCloseTo(other.section.strain[1], 9);
  expect(one.section.strain[2]).toBeCloseTo(-other.section.strain[2], 9);
  expect(Math.abs(one.section.strain[2])).toBeGreaterThan(1e-6);
});

test('a machine narrows what comes in at ±2 per km to less than a third', () => {
  const line = rollerLine('height', 9, 1.6, offsets);
  const out = [-3.45e-3, 0.55e-3].map((camber) =>
    curvatureOut(must(straighten(coldSection(railLike(), rail, undefined, [camber, 0]), line))),
  );
  expect(Math.abs(out[1] - out[0])).toBeLessThan(4e-3 / 3);
  expect(Math.abs(out[1] - out[0])).toBeGreaterThan(1e-5);
});

test('the slope that advice is made of is the change that a moved roller makes', () => {
  const section = coldSection(railLike(), rail, undefined, [-1.45e-3, 0]);
  const line = rollerLine('height', 9, 1.6, offsets);
  const solved = must(straighten(section, line));
  const slopes = offsetSensitivity(section, line, solved);
  for (const roller of [3, 5, 7, 8]) {
    const offset = Float64Array.from(line.offset);
    offset[roller] += 1e-4;
    const moved = must(straighten(section, { ...line, offset }, { near: solved }));
    const change = (curvatureOut(moved) - curvatureOut(solved)) / 1e-4;
    // Sliders switch within 0.1 mm.
    expect(Math.abs(change / slopes[roller] - 1)).toBeLessThan(0.03);
  }
});

test('half the steps and half the layers move the curvature that leaves by less than 0.05 per km', () => {
  // Cold curvature, mesh: 0.05 per km is what a measured rail is worth.
  const line = rollerLine('height', 9, 1.6, offsets);
  const [coarse, fine] = [railLike(86), railLike(172)].map((section) =>
    curvatureOut(must(straighten(coldSection(section, rail, undefined, [-1.45e-3, 0]), line))),
  );
  expect(Math.abs(coarse - fine)).toBeLessThan(5e-5);
});

test('a roller that would pull is let go, and the bar runs clear of it', () => {
  const section = coldSection(railLike(), rail);
  const line = rollerLine('height', 9, 1.6, [0.03, -0.03, 0.02, 0.005]);
  const solved = must(straighten(section, line));
  expect(solved.touching.length).toBeLessThan(9);
  expect(Math.min(...solved.press)).toBeGreaterThan(-1e-3 * Math.max(...solved.press));
  for (let roller = 0; roller < 9; roller++) {
    if (solved.touching.includes(roller)) continue;
    expect(overlap(solved.curvature, line, solved.touching, roller)).toBeLessThan(1e-7);
  }
});

test('wild settings give an answer that holds or a refusal with its residual, never a number that is not one', () => {
  const setting = fc.double({ min: -0.01, max: 0.05, noNaN: true });
  let answers = 0;
  fc.assert(
    fc.property(fc.array(setting, { minLength: 4, maxLength: 4 }), (wild) => {
      const result = straighten(coldSection(railLike(43), rail), rollerLine('height', 9, 1.6, wild), {
        coarse: true,
      });
      if (!result.ok) return Number.isFinite(result.failure.residual);
      answers++;
      return result.value.residual < 1e-7 && Array.from(result.value.curvature).every(Number.isFinite);
    }),
    { numRuns: 40 },
  );
  // 7 % of wild settings cycled in a trial of the method; more than half must work.
  expect(answers).toBeGreaterThan(20);
});

test('what leaves the machine has yielded and holds no force or moment', () => {
  const section = railLike();
  const line = rollerLine('height', 9, 1.6, offsets);
  const start = coldSection(section, rail, undefined, [-1.45e-3, 0]);
  const solved = must(straighten(start, line));
  const stress = stressOf(solved.section);
  const sum = (weight: (i: number) => number) =>
    stress.reduce((total, each, i) => total + each * section.area[i] * weight(i), 0);
  expect(Math.max(...stress)).toBeGreaterThan(20e6);
  expect(Math.abs(sum(() => 1))).toBeLessThan(1);
  expect(Math.abs(sum((i) => section.y[i])) / firstYield(section, rail, 'height').moment).toBeLessThan(1e-9);
  const { share, work } = yieldedAlong(start, line, solved);
  expect(Math.max(...share)).toBeGreaterThan(0.6);
  expect(work).toBeGreaterThan(0);
});

/** A flat-bottomed section of a rail's height, area and inertia: foot, web and head as layers. */
function railLike(layers = 86): Fibres {
  const level = Array.from({ length: 2 * layers }, (_, i) => (((i >> 1) + 0.5) * 0.172) / layers);
  const width = level.map((y) => (y < 0.02 ? 0.15 - 2 * y : y < 0.13 ? 0.0165 : 0.07));
  return fibres(
    width.map((w, i) => ((i % 2 ? 1 : -1) * w) / Math.sqrt(12)),
    level,
    width.map((w) => (w * 0.172) / layers / 2),
  );
}
