import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromSi, print, toSi, type Unit, units } from './unit.ts';

const anyUnit = fc.constantFrom(...(Object.keys(units) as Unit[]));

test('a value that goes to SI and back is the same value', () => {
  fc.assert(
    fc.property(anyUnit, fc.double({ min: -1e6, max: 1e6, noNaN: true }), (unit, value) => {
      expect(fromSi(toSi(value, unit), unit)).toBeCloseTo(value, 6);
    }),
    { seed: 1 },
  );
});

test('no two units end a key alike, so a key names its unit', () => {
  const suffixes = Object.values(units).map(({ suffix }) => suffix);
  expect(new Set(suffixes).size).toBe(suffixes.length);
});

test('numbers are printed with fixed decimals, grouped from four digits, and a true minus sign', () => {
  expect(print(0.0244, 'mm')).toBe('24.4 mm');
  expect(print(1248e3, 'kN')).toBe('1 248 kN');
  expect(print(-3.2e-3, 'mm')).toBe('−3.2 mm');
  expect(print(-1e-9, 'mm')).toBe('0.0 mm');
});

test.each([
  ['a bar is 100 000 Pa (SI brochure, 9th edition)', 'bar', 1e5],
  ['a degree is π/180 rad (SI brochure, 9th edition)', 'deg', Math.PI / 180],
  ['a kWh per tonne is 3 600 J/kg', 'kWhPerT', 3600],
  ['a litre per minute is 1/60 000 m³/s', 'lPerMin', 1 / 60000],
] as const)('%s', (_, unit, si) => {
  expect(toSi(1, unit)).toBeCloseTo(si, 15);
});
