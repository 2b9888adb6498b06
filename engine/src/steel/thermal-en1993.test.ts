import { expect, test } from 'vitest';
import { en1993, en1993Elongation } from './thermal-en1993.ts';

// EN 1993-1-2 clause 3.4.1: values computed from the published formulas to the digits shown.
test('heat capacity, conductivity and elongation follow EN 1993-1-2 to the last printed digit', () => {
  const at = [20, 100, 400, 700, 735, 800, 900];
  expect(at.map((T) => Number(en1993.heatCapacity(T).toFixed(1)))).toEqual([
    439.8, 487.6, 605.9, 1008.2, 5000, 803.3, 650,
  ]);
  expect(at.map((T) => Number(en1993.conductivity(T).toFixed(2)))).toEqual([
    53.33, 50.67, 40.68, 30.69, 29.52, 27.3, 27.3,
  ]);
  expect(at.map((T) => Number((en1993Elongation(T) * 1e3).toFixed(3)))).toEqual([
    0, 0.998, 5.198, 10.118, 10.739, 11, 11.8,
  ]);
  expect(en1993Elongation(600)).toBeCloseTo(8.398e-3, 6);
  expect(en1993Elongation(870)).toBeCloseTo(11.2e-3, 12);
});

test('enthalpy from 20 °C is 632.1 kJ/kg at 900 °C and 827.1 at 1200 °C', () => {
  const at = [100, 600, 735, 800, 900, 1000, 1150, 1200, 1250];
  expect(at.map((T) => Number((en1993.enthalpy(T) / 1e3).toFixed(1)))).toEqual([
    37.2, 335.7, 475.4, 561.6, 632.1, 697.1, 794.6, 827.1, 859.6,
  ]);
  expect(en1993.enthalpy(20)).toBe(0);
});

test('the closed enthalpy is the integral of the heat capacity, piece by piece', () => {
  for (const [from, to] of [
    [-20, 599],
    [601, 734.9],
    [735.1, 899],
    [901, 1300],
  ]) {
    const steps = 20_000;
    const width = (to - from) / steps;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += width * en1993.heatCapacity(from + (i + 0.5) * width);
    // Midpoint rule: its own error at the peak is below 1e-6.
    expect((en1993.enthalpy(to) - en1993.enthalpy(from)) / sum).toBeCloseTo(1, 5);
  }
});

test("the standard's small steps at 600, 750 and 800 °C are kept", () => {
  expect(en1993.heatCapacity(600) - en1993.heatCapacity(600 - 1e-9)).toBeCloseTo(0.3, 1);
  expect(en1993Elongation(750) - en1993Elongation(750 - 1e-9)).toBeCloseTo(-0.84e-5, 6);
  expect(en1993.conductivity(800) - en1993.conductivity(800 - 1e-9)).toBeCloseTo(-0.06, 2);
});
