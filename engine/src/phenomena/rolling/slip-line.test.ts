import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pressureFactor } from './force.ts';
import { stickingHill } from './friction-hill.ts';
import { simsFactor } from './sims.ts';
import { opposedPunches, roughPlatens, singlePunch, slipLine } from './slip-line.ts';
import { frictionlessSpread } from './spread/free-spread.ts';
import { thickStock } from './thick-stock.ts';

/** Hill's field, p/2k at ratios 1, 1.25 … 3.5 and 3.64: width over height of a block, or height over width of punches. */
const ratios = [1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 3.64];
const pressures = [1, 1.024, 1.0768, 1.1426, 1.2138, 1.2867, 1.3592, 1.4303, 1.4994, 1.5662, 1.6308, 1.6659];

test('up to a fan of 45° a block between platens and a strip between punches share one field', () => {
  expect(ratios.map(roughPlatens)).toEqual(pressures);
  expect(ratios.map(opposedPunches)).toEqual(pressures);
  // Halfway from 2 to 2.25 the straight line gives 1.2503; the smooth curve stays within 0.1 % of it.
  expect(roughPlatens(2.125)).toBeGreaterThan(1.249);
  expect(roughPlatens(2.125)).toBeLessThan(1.2512);
});

test('opposed punches press with 1.2138, 1.9713 and 2.4750 of 2k at h/w 2, 5 and 8, and 2.5708 from 8.71', () => {
  // Hill's field, computed from exact theory to four digits.
  expect([1, 2, 3, 5, 7, 8, 8.5].map(opposedPunches)).toEqual([
    1, 1.2138, 1.4994, 1.9713, 2.3272, 2.475, 2.543,
  ]);
  expect(opposedPunches(8.71)).toBeCloseTo(2.5708, 4);
  expect(opposedPunches(20)).toBe(singlePunch);
  expect(singlePunch).toBeCloseTo(2.5708, 4);
  expect(opposedPunches(0.5)).toBe(1);
});

test('rough platens press with 1.2138, 1.6659, 2.0115 and 2.7708 of 2k at w/h 2, 3.64, 5 and 8', () => {
  expect([2, 3.64, 4, 5, 6, 6.72, 8].map(roughPlatens)).toEqual([
    1.2138, 1.6659, 1.7562, 2.0115, 2.2662, 2.448, 2.7708,
  ]);
  // The slab's 1 + w/4h stands 0.23 to 0.25 too high from w/h = 3; Hill's 3/4 + w/4h within 1 %.
  for (const ratio of [3, 4, 6, 8]) {
    expect(stickingHill(ratio) - roughPlatens(ratio)).toBeGreaterThan(0.22);
    expect(stickingHill(ratio) - roughPlatens(ratio)).toBeLessThan(0.26);
    expect(Math.abs((0.75 + ratio / 4) / roughPlatens(ratio) - 1)).toBeLessThan(0.01);
  }
});

test('the pressure only rises with thickness, between the points of the table too', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 9, noNaN: true }), (ratio) => {
      expect(opposedPunches(ratio + 0.01)).toBeGreaterThanOrEqual(opposedPunches(ratio));
      expect(opposedPunches(ratio)).toBeLessThanOrEqual(singlePunch);
    }),
  );
});

/** R such that L/h_m is as asked, on a 10 % pass. */
const withRatio = (ratio: number) => ({
  ...{ h0: 1, h1: 0.9, b0: 50, b1: 50, R: (ratio * 0.95) ** 2 / 0.1, friction: 0.4, flowStress: 1 },
});

test('a thick bloom presses by its slip lines, thin stock by Sims, and nothing jumps between', () => {
  expect(slipLine.factor(withRatio(0.5))).toBeCloseTo(1.2138, 6);
  expect(pressureFactor(withRatio(0.5))).toBeCloseTo(1.2138, 6);
  expect(pressureFactor(withRatio(3))).toBe(simsFactor(withRatio(3)));
  // Tselikov and Zyuzin at L/h_m = 0.5: 1.32, against 1.214 by the slip lines.
  expect(thickStock.factor(withRatio(0.5))).toBeCloseTo(1.32, 2);
  expect(thickStock.factor(withRatio(2))).toBe(1);
  for (let ratio = 0.1; ratio < 4; ratio += 0.005)
    expect(
      Math.abs(pressureFactor(withRatio(ratio + 0.005)) - pressureFactor(withRatio(ratio))),
    ).toBeLessThan(0.12);
  for (let ratio = 0.6; ratio < 1.6; ratio += 0.005)
    expect(
      Math.abs(pressureFactor(withRatio(ratio + 0.005)) - pressureFactor(withRatio(ratio))),
    ).toBeLessThan(0.006);
});

test('without friction a block spreads as much as it grows: one half, nothing at t = p, 0.714 under back-up push', () => {
  // Exact for Mises steel.
  expect(frictionlessSpread(100, 0)).toBe(0.5);
  expect(frictionlessSpread(100, 100)).toBe(0);
  expect(frictionlessSpread(100, -25)).toBeCloseTo(0.714, 3);
});
