import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coldModulus } from '../../steel/elastic-modulus.ts';
import type { Grade } from '../../steel/grade.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { yieldCurve } from '../../steel/yield-curve.ts';
import { asColdSection, bend, bendingSection } from './bend.ts';
import { rectangleBend, shapeFactors } from './closed-forms.ts';
import { coldSection, firstYield, stressOf } from './cold-section.ts';
import { type Fibres, fibres, layeredRectangle } from './fibres.ts';
import { layered } from './layers.ts';
import { firstLoading, overlayOf, perfectlyPlastic, strainAtFirstLoading } from './overlay.ts';

const ideal = perfectlyPlastic(200e9, 240e6);
const curve = yieldCurve(gradeNamed('R260') as Grade);
const rail = overlayOf(curve);

test('a rectangle of 80 layers bends to the closed form at 1.2 and 1.4 times first yield', () => {
  // Closed form; 0.1 % of curvature: layers of 1/80 height put the edge of the core within half a layer.
  const section = layeredRectangle(0.05, 0.1, 80);
  const [moment, curvature] = [(240e6 * 0.05 * 0.1 ** 2) / 6, 240e6 / 200e9 / 0.05];
  for (const m of [1.2, 1.4]) {
    const bending = bendingSection(coldSection(section, ideal));
    expect(bend(bending, m * moment, 0)).toBeGreaterThan(0);
    expect(Math.abs(bending.strain[1] / (rectangleBend(m) * curvature) - 1)).toBeLessThan(1e-3);
  }
});

test('bent and let go, the stress that stays is the closed form and balances', () => {
  // Beer & Johnston ex. 4.6, from memory: −66.7 and +35.6 MPa, R 225 m; 2 % for the outermost of 500 layers.
  const section = layeredRectangle(0.05, 0.12, 500);
  const bending = bendingSection(coldSection(section, ideal));
  bend(bending, 36.8e3, 0);
  bend(bending, 0, 0);
  const after = asColdSection(bending);
  const stress = stressOf(after);
  expect(Math.abs(1 / after.strain[1] / 225 - 1)).toBeLessThan(0.01);
  expect(Math.abs(stress[999] / -66.7e6 - 1)).toBeLessThan(0.02);
  expect(Math.abs(Math.max(...stress.subarray(500)) / 35.6e6 - 1)).toBeLessThan(0.02);
  const force = stress.reduce((sum, s, i) => sum + s * section.area[i], 0);
  const moment = stress.reduce((sum, s, i) => sum + s * section.area[i] * section.y[i], 0);
  expect(Math.abs(force) / (240e6 * 0.05 * 0.12)).toBeLessThan(1e-9);
  expect(Math.abs(moment) / 36.8e3).toBeLessThan(1e-9);
});

test('rectangle, solid circle, thin tube and diamond carry their shape factor', () => {
  // Shape factors of any strength text; bent to 60 times first yield, within 1 % of the limit.
  const shapes: Record<keyof typeof shapeFactors, Fibres> = {
    rectangle: layeredRectangle(0.1, 0.1, 200),
    solidCircle: stack((y) => 2 * Math.sqrt(1 - y * y)),
    thinTube: stack((y) => 2 * (Math.sqrt(1 - y * y) - Math.sqrt(Math.max(0, 0.98 ** 2 - y * y)))),
    diamond: stack((y) => 2 * (1 - Math.abs(y))),
  };
  for (const [name, factor] of Object.entries(shapeFactors)) {
    const section = shapes[name as keyof typeof shapeFactors];
    const { moment } = firstYield(section, ideal, 'height');
    const plastic = Array.from(section.area).reduce(
      (sum, a, i) => sum + a * Math.abs(section.y[i]) * 240e6,
      0,
    );
    expect(Math.abs(plastic / moment / factor - 1)).toBeLessThan(0.01);
    const bending = bendingSection(coldSection(section, ideal));
    expect(bend(bending, 0.999 * plastic, 0)).toBeGreaterThan(0);
    expect(bend(bending, 1.01 * plastic, 0)).toBe(-1);
  }
});

test('one step gives the same as a hundred while the load goes one way', () => {
  const section = layeredRectangle(0.05, 0.1, 60);
  const most = 1.5 * firstYield(section, rail, 'height').moment;
  const [at, by] = [bendingSection(coldSection(section, rail)), bendingSection(coldSection(section, rail))];
  bend(at, most, 0);
  for (let i = 1; i <= 100; i++) bend(by, (most * i) / 100, 0);
  expect(Math.abs(at.strain[1] / by.strain[1] - 1)).toBeLessThan(1e-8);
});

test('after turning round the curve is the first loading doubled (Masing)', () => {
  const section = layeredRectangle(0.05, 0.1, 60);
  const most = 1.4 * firstYield(section, rail, 'height').moment;
  const bending = bendingSection(coldSection(section, rail));
  bend(bending, most, 0);
  const bent = bending.strain[1];
  bend(bending, -most, 0);
  expect(Math.abs(bending.strain[1] + bent)).toBeLessThan(1e-9 * bent);
});

test('the sliders follow the yield curve of the rail, exact at the knots and within 7 MPa between', () => {
  for (const p of [0, 4e-4, 1.1e-3, 2.2e-3, 4.1e-3, 8e-3]) {
    const strain = p + curve.stress(p) / coldModulus;
    expect(Math.abs(firstLoading(rail, strain) / curve.stress(p) - 1)).toBeLessThan(1e-9);
  }
  for (let p = 0; p < 0.008; p += 1e-4) {
    const strain = p + curve.stress(p) / coldModulus;
    expect(Math.abs(firstLoading(rail, strain) - curve.stress(p))).toBeLessThan(7e6);
  }
});

test('any stress below 700 MPa is found again from its strain on first loading', () => {
  fc.assert(
    fc.property(fc.double({ min: -700e6, max: 700e6, noNaN: true }), (stress) => {
      expect(firstLoading(rail, strainAtFirstLoading(rail, stress))).toBeCloseTo(stress, 2);
    }),
  );
});

test('residual stress from the bed is kept, and layers carry nearly the same moment', () => {
  const section = layeredRectangle(0.05, 0.1, 72);
  const residual = Array.from(section.y).map((y) => 100e6 * (Math.abs(y) / 0.05 - 0.5));
  const start = coldSection(section, rail, Float64Array.from(residual));
  const kept = stressOf(start);
  expect(Math.max(...residual.map((stress, i) => Math.abs(kept[i] - stress)))).toBeLessThan(1);
  const condensed = layered(start, 'height', 36);
  const most = 1.3 * firstYield(section, rail, 'height').moment;
  const [full, coarse] = [bendingSection(start), bendingSection(condensed)];
  bend(full, most, 0);
  bend(coarse, most, 0);
  // Two layers merged into one: their own inertia, 1/72², is what is lost.
  expect(Math.abs(coarse.strain[1] / full.strain[1] - 1)).toBeLessThan(0.01);
});

test('bending a crooked section aslant needs no force and gives both moments', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -0.8, max: 0.8, noNaN: true }),
      fc.double({ min: -0.8, max: 0.8, noNaN: true }),
      (h, s) => {
        const section = fibres([0, 1, 0.2, 3, 2, 1.5], [0, 0.3, 2, 1, 4, 3], [1, 2, 1, 1, 3, 1]);
        const [height, side] = [
          firstYield(section, rail, 'height').moment,
          firstYield(section, rail, 'side').moment,
        ];
        const bending = bendingSection(coldSection(section, rail));
        expect(bend(bending, h * height, s * side)).toBeGreaterThanOrEqual(0);
        const stress = stressOf(asColdSection(bending));
        const sum = (weight: (i: number) => number) =>
          stress.reduce((total, each, i) => total + each * section.area[i] * weight(i), 0);
        expect(Math.abs(sum((i) => section.y[i]) / height - h)).toBeLessThan(1e-7);
        expect(Math.abs(sum((i) => section.x[i]) / side - s)).toBeLessThan(1e-7);
        expect(Math.abs(sum(() => 1))).toBeLessThan(1e-7 * 400e6 * 9);
      },
    ),
  );
});

/** 400 strips of a shape of half-height 1 and the given width. */
function stack(width: (y: number) => number): Fibres {
  const level = Array.from({ length: 800 }, (_, i) => ((i >> 1) + 0.5) / 200 - 1);
  return fibres(
    level.map((y, i) => ((i % 2 ? 1 : -1) * width(y)) / Math.sqrt(12)),
    level,
    level.map((y) => width(y) / 400),
  );
}
