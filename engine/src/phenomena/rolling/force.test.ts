import { expect, test } from 'vitest';
import { gradeNamed } from '../../steel/grades.ts';
import { deformationHeat } from './deformation-heat.ts';
import { forceLaws, forceRange, rollForce } from './force.ts';
import { fullForce } from './force-law.ts';
import type { HotPass } from './pass.ts';

const r260 = gradeNamed('R260');
if (!r260) throw new Error('R260 is missing');

const bloom: HotPass = {
  ...{ h0: 0.38, h1: 0.32, b0: 0.28, b1: 0.29, R: 0.575, friction: 0.46, flowStress: 62e6 },
  ...{ temperature: 1180, speed: 2, composition: r260.composition },
};
const flange: HotPass = {
  ...bloom,
  h0: 0.018,
  h1: 0.0145,
  b0: 0.15,
  b1: 0.152,
  temperature: 980,
  flowStress: 140e6,
};

test('a bloom pass is led by the slip lines, a thin flange by Sims, and every law stands beside', () => {
  expect(forceRange(bloom).chosen).toBe('Slip line, opposed punches');
  expect(forceRange(flange).chosen).toBe('Sims');
  for (const pass of [bloom, flange]) {
    const { laws, low, high, value } = forceRange(pass);
    expect(laws.map((law) => law.name)).toEqual(forceLaws.map((law) => law.name));
    expect(low).toBeLessThanOrEqual(value);
    expect(high).toBeGreaterThanOrEqual(value);
    expect(rollForce(pass)).toBeCloseTo(value, 3);
    for (const law of laws) if (law.holds) expect(law.value).toBeGreaterThanOrEqual(low);
  }
});

test('the bloom pass falls in the 3 to 8 MN that breakdown stands see', () => {
  // From memory, needs a mill man's check.
  expect(forceRange(bloom).value).toBeGreaterThan(3e6);
  expect(forceRange(bloom).value).toBeLessThan(8e6);
});

test('Ekelund stands beside the others and stays out of the range', () => {
  const own = forceRange(flange).laws.find((law) => law.name === 'Ekelund');
  expect(own?.holds).toBe(false);
});

test('force grows with the square of the size and in step with the flow stress; torque arms stay', () => {
  const scaled = { ...bloom, h0: 0.76, h1: 0.64, b0: 0.56, b1: 0.58, R: 1.15 };
  expect(rollForce(scaled) / rollForce(bloom)).toBeCloseTo(4, 9);
  expect(rollForce({ ...bloom, flowStress: 124e6 }) / rollForce(bloom)).toBeCloseTo(2, 9);
  expect(fullForce({ ...bloom, b0: 5, b1: 5 }) / (5 * 0.185742 * 1.154701 * 62e6)).toBeCloseTo(1, 5);
});

test('deformation warms by 5.6 K at 100 MPa and a strain of 0.3, and by 14 K at 150 MPa and 0.5', () => {
  // Computed with η 0.9 to 0.95, ρ c of hot steel; 0.93 and 7500 kg/m³ × 660 J/kgK here, 3 %.
  expect(deformationHeat(100e6, 0.3, 7500) / 660).toBeCloseTo(5.6, 1);
  expect(deformationHeat(150e6, 0.5, 7500) / 660).toBeCloseTo(14.1, 1);
});
