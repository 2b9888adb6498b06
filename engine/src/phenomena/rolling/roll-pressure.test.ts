import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { fordAlexander } from './ford-alexander.ts';
import { orowanPascoe } from './orowan-pascoe.ts';
import type { FlatPass } from './pass.ts';
import { siebelForce } from './siebel-force.ts';
import { neutralAngle, neutralHeight, simsFactor, simsLeverArm } from './sims.ts';
import { tselikovFactor, tselikovNeutral } from './tselikov.ts';
import { vonKarman } from './von-karman.ts';

const thin = (r: number, slenderness: number): FlatPass => ({
  ...{ h0: 1 / (1 - r), h1: 1, b0: 30, b1: 30, R: slenderness, friction: 0.4, flowStress: 1 },
});

// Sims Q_p computed from the remembered formula; columns R'/h1 = 5, 10, 25, 50, 100.
const simsTable: readonly (readonly [r: number, ...row: number[]])[] = [
  [0.05, 0.904, 0.956, 1.059, 1.176, 1.341],
  [0.1, 0.948, 1.023, 1.17, 1.336, 1.571],
  [0.2, 1.003, 1.111, 1.324, 1.563, 1.899],
  [0.3, 1.037, 1.173, 1.438, 1.734, 2.152],
  [0.4, 1.055, 1.216, 1.528, 1.876, 2.365],
  [0.5, 1.057, 1.242, 1.598, 1.993, 2.547],
];

test('Sims gives the whole table of pressure factors to its last digit', () => {
  for (const [r, ...row] of simsTable)
    expect([5, 10, 25, 50, 100].map((R) => Number(simsFactor(thin(r, R)).toFixed(3)))).toEqual(row);
});

test('Sims: lever arm and neutral height of a 30 % pass at R/h1 = 25 are 0.482 and 1.0718', () => {
  // Computed from the formula, 0.2 %.
  expect(simsLeverArm(thin(0.3, 25))).toBeCloseTo(0.482, 3);
  const heights = [0.1, 0.2, 0.3].map((r) => Number(neutralHeight(thin(r, 25)).toFixed(4)));
  expect(heights).toEqual([1.0237, 1.0474, 1.0718]);
  for (const [r, at5, at100] of [
    [0.1, 0.495, 0.494],
    [0.3, 0.484, 0.48],
    [0.5, 0.47, 0.461],
  ]) {
    expect(Math.abs(simsLeverArm(thin(r, 5)) - at5)).toBeLessThan(6e-4);
    expect(Math.abs(simsLeverArm(thin(r, 100)) - at100)).toBeLessThan(6e-4);
  }
  expect(neutralAngle(thin(0.3, 25))).toBeGreaterThan(0);
});

test('the short forms stand within 15 % of Sims over the table where L/h_m is 1 to 5, as handbooks claim', () => {
  for (const [r] of simsTable)
    for (const R of [5, 10, 25, 50, 100]) {
      const pass = thin(r, R);
      const ratio = Math.sqrt(R * (pass.h0 - 1)) / ((pass.h0 + 1) / 2);
      if (ratio < 1 || ratio > 5) continue;
      expect(Math.abs(orowanPascoe.factor(pass) / simsFactor(pass) - 1)).toBeLessThan(0.15);
      expect(Math.abs(fordAlexander.factor(pass) / simsFactor(pass) - 1)).toBeLessThan(0.15);
    }
  const pass = thin(0.3, 25);
  expect(fordAlexander.factor(pass)).toBeCloseTo(0.785 + 0.25 * 2.696, 3);
  expect(orowanPascoe.factor(pass)).toBeCloseTo(0.8 + 0.25 * 2.696, 3);
  expect(siebelForce.factor(pass)).toBeCloseTo(1 + 0.5 * 0.4 * 2.696, 3);
});

// Computed: Tselikov's closed form; von Karman by an independent integration, friction min(μp, k).
// h0, h1, R, μ | Tselikov p/2k, numerical p/2k, x_n/L, h_n/h1, a/L, p_max/2k
const integrated: readonly (readonly number[])[] = [
  [100, 80, 250, 0.3, 1.0996, 1.0619, 0.2639, 1.0174, 0.4918, 1.1674],
  [100, 80, 250, 0.4, 1.1535, 1.1162, 0.3221, 1.0259, 0.4905, 1.2807],
  [30, 24, 250, 0.3, 1.2337, 1.1971, 0.3688, 1.034, 0.4893, 1.4613],
  [10, 8, 200, 0.25, 1.3247, 1.2894, 0.3969, 1.0394, 0.4885, 1.6776],
  [6, 4.8, 200, 0.1, 1.1348, 1.0974, 0.3055, 1.0233, 0.4908, 1.2408],
  [380, 320, 575, 0.35, 1.078, 1.049, 0.269, 1.0136, 0.4938, 1.1289],
];

const passOf = ([h0, h1, R, friction]: readonly number[]): FlatPass => ({
  ...{ h0, h1, R, friction, b0: 1000, b1: 1000, flowStress: 1 },
});

test('Tselikov gives the closed values, a few per cent above the true arc', () => {
  for (const row of integrated) {
    expect(tselikovFactor(passOf(row))).toBeCloseTo(row[4], 4);
    const chord = tselikovFactor(passOf(row)) / must(vonKarman(passOf(row))).factor;
    expect(chord).toBeGreaterThan(1.02);
    expect(chord).toBeLessThan(1.05);
  }
});

test('von Karman integrated along the arc gives the tabulated pressures, neutral plane and arm', () => {
  for (const row of integrated) {
    const { factor, neutral, neutralHeight: height, armByPressure, peak } = must(vonKarman(passOf(row)));
    expect([factor, neutral, height, armByPressure, peak].map((value) => Number(value.toFixed(4)))).toEqual(
      row.slice(5),
    );
  }
});

test('moments balance: the arm from friction along the arc is the arm from the pressure', () => {
  for (const row of integrated) {
    const { armByFriction, armByPressure } = must(vonKarman(passOf(row)));
    expect(armByFriction / armByPressure).toBeCloseTo(1, 5);
  }
});

test('the integration converges with the square of the step, as its trapezoids should', () => {
  const error = (steps: number) => {
    const { factor } = must(vonKarman(passOf(integrated[2]), steps));
    return Math.abs(factor - must(vonKarman(passOf(integrated[2]), 20_000)).factor);
  };
  const order = Math.log2(error(50) / error(100));
  expect(order).toBeCloseTo(2, 1);
});

test('without enough friction to pull the bar through there is no neutral plane, and the model says so', () => {
  const weak = vonKarman({ h0: 100, h1: 80, R: 250, friction: 0.1, b0: 1 });
  expect(weak.ok).toBe(false);
  const pass = { ...passOf(integrated[0]), friction: 0.1 };
  expect(tselikovFactor(pass)).toBe(1);
  expect(tselikovNeutral(pass)).toBe(1);
  // Just above the limit δ = 1 the formula itself goes to 1.
  expect(tselikovFactor({ ...pass, friction: (20 / 2 / Math.sqrt(5000)) * (1 + 1e-5) })).toBeCloseTo(1, 4);
});
