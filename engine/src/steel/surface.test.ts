import { expect, test } from 'vitest';
import {
  carbonDiffusivity,
  carbonShare,
  depthTo,
  furtherLoss,
  thinned,
  untouched,
} from './decarburisation.ts';
import { furnaceGas, metalLoss, metalRecession, scaleLaw } from './oxidation.ts';

const hour = 3600;

test('iron in air grows 1.47, 2.08 and 2.54 mm of scale in one, two and three hours at 1200 °C', () => {
  // Computed from the remembered parabolic law, rounded to 0.01; 0.89 mm after 1 h at 1100, 2.60 after 2 h at 1250.
  const air = scaleLaw();
  for (const [T, hours, mm] of [
    [1200, 1, 1.47],
    [1200, 2, 2.08],
    [1200, 3, 2.54],
    [1100, 1, 0.89],
    [1250, 2, 2.6],
  ])
    expect(Math.abs(air.grown(0, T, hours * hour) * 1e3 - mm)).toBeLessThan(0.006);
});

test('growth in many short steps is growth in one, and furnace gas grows 0.6 of the thickness', () => {
  const gas = scaleLaw(furnaceGas);
  let scale = 0;
  for (let i = 0; i < 240; i++) scale = gas.grown(scale, 1200, 30);
  expect(scale).toBeCloseTo(gas.grown(0, 1200, 2 * hour), 12);
  expect(scale / scaleLaw().grown(0, 1200, 2 * hour)).toBeCloseTo(0.6, 12);
  expect(gas.name).toContain('0.6');
});

test('a millimetre of scale takes 4.3 kg of iron from a square metre, 0.63 % of a 300 × 400 mm bloom', () => {
  expect(metalLoss(1e-3)).toBeCloseTo(4.3, 1);
  const surfacePerKg = (2 * (0.3 + 0.4)) / (0.3 * 0.4 * 7850);
  expect(surfacePerKg).toBeCloseTo(1.486e-3, 6);
  expect(metalLoss(1e-3) * surfacePerKg).toBeCloseTo(0.0063, 4);
  expect(metalRecession(1e-3) * 7850).toBeCloseTo(metalLoss(1e-3), 12);
});

test('carbon diffuses 2√(Dt) of 1.51, 2.30 and 2.79 mm in two hours at 1100, 1200 and 1250 °C', () => {
  // Computed from D = 0.2e-4 exp(−142 000/RT), rounded to 0.01.
  for (const [T, mm] of [
    [1100, 1.51],
    [1200, 2.3],
    [1250, 2.79],
  ])
    expect(Math.abs(2e3 * Math.sqrt(carbonDiffusivity(T) * 2 * hour) - mm)).toBeLessThan(0.006);
});

test('without scaling the carbon follows the error function, from nothing at the skin to all in the core', () => {
  const loss = furtherLoss(untouched, 1200, 2 * hour, 0);
  const reach = 2 * Math.sqrt(loss.diffused);
  expect(carbonShare(loss, 0)).toBeCloseTo(0, 12);
  expect(carbonShare(loss, reach / 2)).toBeCloseTo(0.5204998778, 9); // erf(0.5), tables
  expect(carbonShare(loss, 6 * reach)).toBeCloseTo(1, 12);
  expect(carbonShare(loss, 0, 0.3)).toBeCloseTo(0.3, 12);
});

test('at a held temperature the profile keeps Birks and Jackson: the skin is bare, and it holds the moving boundary', () => {
  // With recession X = √(2 k t) the profile must satisfy Fick's law in a frame fixed to the metal.
  const k = 4e-11;
  const at = (t: number, x: number) => {
    const recession = Math.sqrt(2 * k * t);
    return carbonShare(furtherLoss(untouched, 1200, t, recession), x - recession);
  };
  const D = carbonDiffusivity(1200);
  const [t, x, dt, dx] = [hour, 1.8e-3, 1, 2e-5];
  const change = (at(t + dt, x) - at(t - dt, x)) / (2 * dt);
  const bend = (at(t, x + dx) - 2 * at(t, x) + at(t, x - dx)) / (dx * dx);
  expect(change / (D * bend)).toBeCloseTo(1, 3);
  expect(at(t, Math.sqrt(2 * k * t))).toBeCloseTo(0, 12);
});

test('the depth to a share is where that share stands; scaling eats part of the poor layer', () => {
  const still = furtherLoss(untouched, 1200, 2 * hour, 0);
  const scaled = furtherLoss(untouched, 1200, 2 * hour, 0.8e-3);
  expect(carbonShare(still, depthTo(still, 0.8))).toBeCloseTo(0.8, 5);
  expect(carbonShare(scaled, depthTo(scaled, 0.8))).toBeCloseTo(0.8, 5);
  expect(depthTo(scaled)).toBeLessThan(depthTo(still));
  expect(depthTo(untouched)).toBe(0);
  expect(depthTo(still)).toBe(depthTo(still, 0.8));
  expect(thinned(1.4e-3, 13.87)).toBeCloseTo(0.376e-3, 6);
});

test('a bloom soaked two hours loses carbon to 1 to 2 mm, as plants see', () => {
  // Common practice, no source: 1 to 2 mm on the bloom, some tenths on the rail.
  const scale = scaleLaw(furnaceGas).grown(0, 1200, 2 * hour);
  const depth = depthTo(furtherLoss(untouched, 1200, 2 * hour, metalRecession(scale)));
  expect(depth * 1e3).toBeGreaterThan(1);
  expect(depth * 1e3).toBeLessThan(2);
});
