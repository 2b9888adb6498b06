import { expect, test } from 'vitest';
import { criticalPoints } from './critical-points.ts';
import { austeniteStrain, density, hotFactor, pearliteStrain, thermalStrain } from './expansion.ts';
import { gradeNamed } from './grades.ts';

const r260 = gradeNamed('R260');
if (!r260) throw new Error('R260 is missing');

test('a finished rail is 1.011 to 1.014 of its cold size between 880 and 980 °C, 1.013 at 950', () => {
  // Rolling practice, from memory, unconfirmed; and about 1.016 at 1050 to 1100 °C.
  for (const T of [880, 900, 930, 980]) {
    expect(hotFactor(r260, T)).toBeGreaterThan(1.011);
    expect(hotFactor(r260, T)).toBeLessThan(1.014);
  }
  expect(hotFactor(r260, 950)).toBeCloseTo(1.013, 4);
  expect(hotFactor(r260, 1075)).toBeCloseTo(1.016, 3);
  expect(hotFactor(r260, 20)).toBe(1);
});

test('pearlite grows as the handbook says: mean expansion 11.1, 12.5, 13.7 and 14.7e-6 up to 100, 300, 500 and 700 °C', () => {
  // Table for 0.8 % C, from memory, unconfirmed; the line is within 0.2e-6.
  for (const [T, mean] of [
    [100, 11.1],
    [300, 12.5],
    [500, 13.7],
    [700, 14.7],
  ])
    expect(Math.abs((pearliteStrain(T) / (T - 20)) * 1e6 - mean)).toBeLessThan(0.2);
});

test('austenite is shorter than pearlite by 0.30 % at 650 °C and grows by 23e-6 per kelvin', () => {
  expect(pearliteStrain(650) - austeniteStrain(650)).toBeCloseTo(3.0e-3, 12);
  expect((austeniteStrain(900) - austeniteStrain(700)) / 200).toBeCloseTo(23e-6, 12);
  expect(thermalStrain(650, 0.25)).toBeCloseTo(0.25 * pearliteStrain(650) + 0.75 * austeniteStrain(650), 12);
});

test('density is 7850 kg/m³ cold and its volume is the cube of the hot factor', () => {
  expect(density(20)).toBe(7850);
  expect(density(950, r260) * hotFactor(r260, 950) ** 3).toBeCloseTo(7850, 9);
  expect(density(950)).toBeCloseTo(density(950, r260), 9);
  // Without a grade the change is centred on 745 °C.
  expect(density(745)).toBeCloseTo(7850 / (1 + thermalStrain(745, 0.5)) ** 3, 9);
  expect(density(725)).toBeCloseTo(7850 / (1 + pearliteStrain(725)) ** 3, 9);
  // Phase density law of the Jablonka type at 650 °C, 0.75 % C: austenite 7693.9 kg/m³, from memory; ours 0.2 % more.
  const austenite = 7850 / (1 + austeniteStrain(650)) ** 3;
  expect(Math.abs(austenite / 7693.9 - 1)).toBeLessThan(0.003);
});

test('the hot factor follows the phases of the heating law through the change', () => {
  const { ac1, ac3 } = criticalPoints(r260.composition);
  expect(hotFactor(r260, ac1)).toBeCloseTo(1 + pearliteStrain(ac1), 12);
  expect(hotFactor(r260, ac3)).toBeCloseTo(1 + austeniteStrain(ac3), 12);
});
