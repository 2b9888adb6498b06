import { expect, test } from 'vitest';
import { footprint, impactPressure, jetForce } from './jet.ts';
import { residualWater } from './residual-water.ts';
import { heatTaken, skinDrop } from './sudden-film.ts';

const litresPerMinute = 1e-3 / 60;

test.each([
  // l/min, bar, N: momentum by hand; the catalogue rule 0.024 kgf per l/min and √bar agrees within 0.2 %
  [60, 150, 173],
  [60, 200, 200],
  [100, 250, 373],
])('%i l/min at %i bar press with %i N', (flow, bar, force) => {
  expect(Math.abs(jetForce(flow * litresPerMinute, bar * 1e5) - force)).toBeLessThan(0.5);
});

test('the impact pressure times the footprint is the square part of the jet force', () => {
  const print = footprint(0.15, 0.56, 0.04, 0.26);
  const pressure = impactPressure(200, print, 0.26, 0.6);
  expect(pressure * print.width * print.depth).toBeCloseTo(0.6 * 200 * Math.cos(0.26), 9);
});

test('an upright jet is as wide as its cone', () => {
  const { width, depth } = footprint(0.2, Math.PI / 6, Math.PI / 60, 0);
  expect(width).toBeCloseTo(2 * 0.2 * Math.tan(Math.PI / 12), 12);
  expect(depth).toBeCloseTo(2 * 0.2 * Math.tan(Math.PI / 120), 12);
});

test.each([
  // V kg/m²s, h W/m²K at ΔT 900 K: Wendelstorf's formula evaluated by hand
  [5, 556],
  [10, 1233],
  [20, 2266],
  [30, 2816],
])('%i kg of water per m² and s take heat by %i W/m²K', (flux, h) => {
  expect(Math.abs(residualWater(flux, 900) - h)).toBeLessThan(1);
});

test('beyond its range the law of the running water is held, and no water takes no heat', () => {
  expect(residualWater(10, 50)).toBe(residualWater(10, 180));
  expect(residualWater(40, 900)).toBe(residualWater(30, 900));
  expect(residualWater(0, 900)).toBe(0);
});

const hotSteel = { conductivity: 28, density: 7650, heatCapacity: 650 };

test.each([
  // h W/m²K, s, K at the skin, kJ/m²: semi-infinite body from 1150 °C into 25 °C, computed from the closed form
  [20_000, 0.03, 294, 551],
  [20_000, 0.1, 453, 1586],
  [40_000, 0.03, 480, 925],
  [40_000, 0.1, 665, 2421],
])('a jet of %i W/m²K for %f s takes %i K from the skin and %i kJ/m²', (h, time, drop, heat) => {
  expect(Math.abs(skinDrop(h, time, hotSteel) * 1125 - drop)).toBeLessThan(0.6);
  expect(Math.abs((heatTaken(h, time, hotSteel) * 1125) / 1e3 - heat)).toBeLessThan(1);
});

test('the heat taken grows by what passes the film at the skin', () => {
  const [h, t, dt] = [30_000, 0.05, 1e-5];
  const rate = (heatTaken(h, t + dt, hotSteel) - heatTaken(h, t - dt, hotSteel)) / (2 * dt);
  expect(rate / (h * (1 - skinDrop(h, t, hotSteel)))).toBeCloseTo(1, 6);
});
