import fc from 'fast-check';
import { expect, test } from 'vitest';
import { austenite } from './austenite.ts';
import { criticalPoints } from './critical-points.ts';
import { gradeNamed } from './grades.ts';
import { heatingBases, heatingLaw } from './heating.ts';
import { pearlite } from './pearlite.ts';
import { en1993 } from './thermal-en1993.ts';

const r260 = gradeNamed('R260');
if (!r260) throw new Error('R260 is missing');
const law = heatingLaw(r260);

test('a rail steel changes to austenite between 725 and 765 °C, a chromium rail higher', () => {
  const { ac1, ac3 } = criticalPoints(r260.composition);
  expect(ac1).toBeCloseTo(724.7, 1);
  expect(ac3).toBeCloseTo(764.7, 1);
  const chromium = criticalPoints({ ...r260.composition, Si: 0.8, Cr: 1 });
  expect(chromium.ac1).toBeCloseTo(723 - 10.7 * 0.95 + 29.1 * 0.8 + 16.9, 9);
  const soft = criticalPoints({ C: 0.2, Si: 0.3, Mn: 0.5, P: 0, S: 0, Cr: 0.1, V: 0.05 });
  expect(soft.ac3).toBeCloseTo(910 - 203 * Math.sqrt(0.2) + 0.3 * 44.7 + 5.2 - 15 - 1.1, 9);
});

test('below the change it is the pearlite law, above the austenite law, and the heat between depends on its ends alone', () => {
  for (const T of [20, 300, 700]) expect(law.enthalpy(T)).toBe(pearlite.enthalpy(T));
  for (const T of [770, 950, 1250]) expect(law.enthalpy(T)).toBe(austenite.enthalpy(T));
  expect(law.enthalpy(20)).toBe(0);
});

test('heating to 1200 °C takes within 4 % of the heat EN 1993-1-2 asks for structural steel', () => {
  // The standard is for low-carbon steel; handbook heat of 0.8 % C steel is a few per cent less (from memory).
  const ratio = law.enthalpy(1200) / en1993.enthalpy(1200);
  expect(ratio).toBeGreaterThan(0.96);
  expect(ratio).toBeLessThan(1);
});

test('heat content rises with temperature everywhere, and no value jumps', () => {
  for (let T = -40; T < 1590; T += 0.25) {
    expect(law.enthalpy(T + 0.25)).toBeGreaterThan(law.enthalpy(T));
    expect(Math.abs(law.conductivity(T + 0.25) - law.conductivity(T))).toBeLessThan(0.1);
  }
  const { ac1, ac3 } = criticalPoints(r260.composition);
  for (const T of [ac1, ac3])
    expect(law.heatCapacity(T + 1e-7) / law.heatCapacity(T - 1e-7)).toBeCloseTo(1, 0);
});

test('the heat capacity is the slope of the heat content, inside the change too', () => {
  for (const T of [100, 600, 730, 745, 760, 764, 900, 1230]) {
    const slope = (law.enthalpy(T + 1e-3) - law.enthalpy(T - 1e-3)) / 2e-3;
    expect(slope / law.heatCapacity(T)).toBeCloseTo(1, 6);
  }
});

test('any heat content gives back its temperature, by either law', () => {
  for (const basis of heatingBases) {
    const { enthalpy, temperatureOf } = heatingLaw(r260, basis);
    fc.assert(
      fc.property(fc.double({ min: -50, max: 1600, noNaN: true }), (T) => {
        expect(Math.abs(temperatureOf(enthalpy(T)) - T)).toBeLessThan(1e-5);
      }),
    );
    for (const T of [-80, -50, 20, 1600, 1700])
      expect(Math.abs(temperatureOf(enthalpy(T)) - T)).toBeLessThan(2);
  }
});
