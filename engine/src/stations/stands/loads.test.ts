import { expect, test } from 'vitest';
import type { FlowStressLaw } from '../../steel/flow-stress.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { firstContact } from './bite.ts';
import type { Element } from './elements.ts';
import { type LoadRule, loadsOf } from './loads.ts';

const grade = gradeNamed('R260');
if (!grade) throw new Error('no R260');
const steel = (stress: number): FlowStressLaw => ({
  name: 'constant',
  source: 'test',
  status: 'computed from exact theory',
  validity: {},
  stress: () => stress,
  mean: () => stress,
  rateExponent: () => 0,
});
const rule: LoadRule = {
  flowStress: steel(100e6),
  composition: grade.composition,
  forceLaw: 'Sims',
  force: 1,
  torque: 1,
  friction: 0.3,
  speed: 2,
  workingRadius: 0.5,
};
const strip: Element = {
  name: 'bar',
  roll: 'horizontal',
  entryArea: 0.02,
  exitArea: 0.014,
  h0: 0.02 / 0.7,
  h1: 0.02,
  b0: 0.7,
  b1: 0.7,
  R: 0.5,
  leaning: 0,
  from: 0,
  to: 1,
};

test('a wide strip presses with the pressure factor that Sims gives', () => {
  // computed from Sims's formula: Q_p 1.438 at r 0.3, R/h1 25; b 0.7 m, 2k 1.155 σ; third digit of the table
  const { force } = loadsOf([strip], [1000], rule);
  const arc = Math.sqrt(0.5 * (strip.h0 - strip.h1));
  expect(force / (0.7 * arc * (2 / Math.sqrt(3)) * 100e6)).toBeCloseTo(1.438, 3);
});

test('torque acts at 0.482 of the arc in that strip, and power is torque times turning', () => {
  // computed from Sims's formula: a/L 0.482
  const { force, torque, power } = loadsOf([strip], [1000], rule);
  const arc = Math.sqrt(0.5 * (strip.h0 - strip.h1));
  expect(torque / (force * arc)).toBeCloseTo(0.482, 3);
  expect(power).toBeCloseTo((2 * torque * 2) / 0.5, 3);
});

test('a part that is not touched carries no load', () => {
  const carried = { ...strip, h1: strip.h0 };
  const { force, torque } = loadsOf([carried], [1000], rule);
  expect([force, torque]).toEqual([0, 0]);
});

test('an idle roll is dragged round by the driven ones', () => {
  const foot: Element = {
    ...strip,
    name: 'foot',
    roll: 'foot roll',
    R: 0.75,
    h0: 0.03,
    h1: 0.024,
    b0: 0.15,
    b1: 0.151,
  };
  const alone = loadsOf([strip], [1000], rule);
  const both = loadsOf([strip, foot], [1000, 1000], rule);
  expect(both.force).toBeCloseTo(alone.force, 3);
  expect(both.footForce).toBeGreaterThan(0);
  expect(both.torque).toBeGreaterThan(alone.torque);
});

test('a draught of 1.8 mm on rolls of 510 mm bites at 4.815°', () => {
  // published exam item, rolls 510 mm, draught 1.8 mm: 4.8°, exact 4.815°
  const box = (half: number) => ({
    vertices: [
      { x: -0.1, y: 0, bulge: 0 },
      { x: -0.1, y: half, bulge: 0 },
      { x: 0.1, y: half, bulge: 0 },
      { x: 0.1, y: 0, bulge: 0 },
    ],
  });
  const barrel = {
    vertices: [
      { x: -1, y: 0.01, bulge: 0 },
      { x: 1, y: 0.01, bulge: 0 },
    ],
  };
  const { angle } = firstContact(box(0.0109), barrel, 0.255 + 0.01);
  expect((angle * 180) / Math.PI).toBeCloseTo(4.815, 3);
});
