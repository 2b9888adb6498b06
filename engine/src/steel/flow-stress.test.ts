import { expect, test } from 'vitest';
import { calibrated } from './flow-stress.ts';
import { flowStressDoubt, flowStressOf } from './flow-stress-choice.ts';
import { gradeNamed } from './grades.ts';
import { misaka } from './misaka.ts';
import { shida, shidaParts } from './shida.ts';

// Computed from Shida's remembered formula, strain 0.3, MPa to the digits shown: guards the implementation only.
const shidaTable = [
  [0.2, 900, 122.4, 157.1, 201.6, 258.7, 162.6, 0.1083],
  [0.2, 1000, 82.8, 109.3, 144.2, 190.4, 116.4, 0.1206],
  [0.2, 1100, 58.8, 79.8, 108.4, 147.1, 87.4, 0.1328],
  [0.72, 850, 134.7, 181.7, 245.2, 330.9, 205.0, 0.1301],
  [0.72, 900, 108.5, 148.4, 202.8, 277.2, 169.6, 0.1358],
  [0.72, 1000, 73.7, 103.4, 145.1, 203.6, 121.3, 0.147],
  [0.72, 1100, 52.6, 75.7, 109.0, 156.9, 91.1, 0.1582],
  [0.72, 1200, 39.0, 57.6, 85.1, 125.8, 71.2, 0.1694],
  [0.8, 1000, 72.2, 102.3, 144.8, 205.1, 121.8, 0.151],
] as const;

test('Shida gives the check values at 0.1, 1, 10 and 100 1/s, their mean and their exponent', () => {
  for (const [C, T, ...row] of shidaTable) {
    const law = shida(C);
    const stresses = [0.1, 1, 10, 100].map((rate) => law.stress(0.3, rate, T) / 1e6);
    const own = [...stresses, law.mean(0.3, 10, T) / 1e6].map((value) => Number(value.toFixed(1)));
    expect(own).toEqual(row.slice(0, 5));
    expect(law.rateExponent(10, T)).toBeCloseTo(row[5], 4);
  }
});

test('the two branches of Shida meet: the remembered coefficients belong together', () => {
  // Boundary 841.4 °C at 0.2 % C, 759.2 °C at 0.72 %; the dip factor steps 1 % there, the exponent 0.0006.
  for (const [C, boundary] of [
    [0.2, 841.4],
    [0.45, 788.0],
    [0.72, 759.2],
  ]) {
    const { temperature, exponent } = shidaParts(C);
    expect(Math.abs(temperature(boundary - 0.1) / temperature(boundary + 0.1) - 1)).toBeLessThan(0.02);
    expect(Math.abs(exponent(boundary - 0.1) - exponent(boundary + 0.1))).toBeLessThan(0.003);
  }
});

test('rail steel changes branch at 759.2 °C, 0.2 % C steel at 841.4 °C', () => {
  // Computed from the formula, to 0.1 K: above, the exponent follows the austenite line.
  for (const [C, boundary] of [
    [0.2, 841.4],
    [0.72, 759.2],
  ]) {
    const line = (T: number) => ((-0.019 * C + 0.126) * (T + 273)) / 1000 + 0.075 * C - 0.05;
    expect(shidaParts(C).exponent(boundary + 0.1)).toBeCloseTo(line(boundary + 0.1), 12);
    expect(shidaParts(C).exponent(boundary - 0.1)).not.toBeCloseTo(line(boundary - 0.1), 6);
  }
});

test('the fast extensions begin at 100 and at 1000 1/s', () => {
  const { rate, exponent } = shidaParts(0.72);
  const m = exponent(950);
  expect(rate(99, 950)).toBeCloseTo(9.9 ** m, 12);
  expect(rate(999, 950)).toBeCloseTo(99.9 ** m * 9.99 ** (m / 2.4), 12);
  expect(rate(2000, 950)).toBeCloseTo(200 ** m * 20 ** (m / 2.4) * 2 ** (m / 15), 12);
  expect(shida(0.72).rateExponent(99.9, 950)).toBe(m);
  expect(shida(0.72).rateExponent(999, 950)).toBeCloseTo(m * (1 + 1 / 2.4), 12);
  expect(shida(0.72).rateExponent(101, 950)).toBeGreaterThan(m);
});

test('at 740 °C, below the boundary, rail steel follows the two-phase branch', () => {
  const [C, K] = [0.72, 1.013];
  const q = 30 * 1.62 * (K - (0.95 * 1.21) / 1.14) ** 2 + 0.78 / 0.81;
  const sigma = 0.28 * 9.80665 * q * Math.exp(1.04 / (0.19 * 1.13) - 0.01 / 0.77);
  const n = 0.41 - 0.07 * C;
  const m = (0.081 * C - 0.154) * K + (-0.019 * C + 0.207) + 0.027 / 1.04;
  const f = 1.3 * 1.5 ** n - 0.45;
  expect(shida(C).stress(0.3, 1, 740) / 1e6).toBeCloseTo(sigma * f * 0.1 ** m, 6);
});

test('the mean is the mean of the stress over the way to the strain, also above 0.7 where hardening stops', () => {
  for (const law of [shida(0.72), misaka(0.72)])
    for (const strain of [0.2, 0.6, 0.7, 1.5]) {
      const steps = 4000;
      let sum = 0;
      for (let i = 0; i < steps; i++) sum += law.stress(((i + 0.5) * strain) / steps, 20, 1000) / steps;
      expect(law.mean(strain, 20, 1000) / sum).toBeCloseTo(1, 4);
    }
  expect(shida(0.72).stress(3, 10, 1000)).toBe(shida(0.72).stress(0.7, 10, 1000));
});

test('the rate exponent is the slope of ln σ over ln rate, through both fast extensions', () => {
  for (const law of [shida(0.72), misaka(0.72)])
    for (const rate of [0.5, 20, 300, 3000]) {
      const slope = Math.log(law.stress(0.3, rate * 1.001, 950) / law.stress(0.3, rate / 1.001, 950));
      expect(law.rateExponent(rate, 950)).toBeCloseTo(slope / (2 * Math.log(1.001)), 6);
    }
  for (const rate of [100, 1000])
    expect(shida(0.72).stress(0.3, rate * (1 + 1e-9), 950) / shida(0.72).stress(0.3, rate, 950)).toBeCloseTo(
      1,
      8,
    );
});

test('Misaka gives the check values at 1, 10 and 100 1/s', () => {
  // Computed from the remembered formula, strain 0.3.
  const own = (C: number, T: number) =>
    [1, 10, 100].map((rate) => Number((misaka(C).mean(0.3, rate, T) / 1e6).toFixed(1)));
  expect(own(0.72, 900)).toEqual([142.8, 192.6, 259.9]);
  expect(own(0.72, 1000)).toEqual([106.3, 143.4, 193.4]);
  expect(own(0.72, 1100)).toEqual([82.6, 111.4, 150.3]);
  expect(own(0.72, 1200)).toEqual([66.4, 89.6, 120.9]);
  expect(own(0.2, 1000)).toEqual([90.1, 121.5, 163.9]);
});

test('the laws disagree on carbon: Misaka hardens 18 %, Shida not at all at 10 1/s', () => {
  const gain = (law: typeof shida) => law(0.72).mean(0.3, 10, 1000) / law(0.2).mean(0.3, 10, 1000);
  expect(gain(misaka)).toBeCloseTo(1.18, 2);
  expect(gain(shida)).toBeCloseTo(1.04, 2);
  expect(misaka(0.72).mean(0.3, 10, 1000) / shida(0.72).mean(0.3, 10, 1000)).toBeCloseTo(
    1 + flowStressDoubt,
    2,
  );
});

test('a mill factor multiplies the law and shows in its name', () => {
  const r260 = gradeNamed('R260');
  if (!r260) throw new Error('R260 is missing');
  const [plain, factored] = [flowStressOf(r260), flowStressOf(r260, 'shida', 1.12)];
  expect(factored.name).toBe('Shida × 1.120');
  expect(factored.stress(0.3, 10, 950)).toBeCloseTo(1.12 * plain.stress(0.3, 10, 950), 3);
  expect(factored.mean(0.3, 10, 950)).toBeCloseTo(1.12 * plain.mean(0.3, 10, 950), 3);
  expect(flowStressOf(r260, 'misaka')).toMatchObject({ name: 'Misaka' });
  expect(calibrated(plain, 0.9).rateExponent(10, 950)).toBe(plain.rateExponent(10, 950));
});
