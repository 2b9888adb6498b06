import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { NumberField } from '../plan/fields.ts';
import { inField, settled, stepped } from './stepping.ts';

const gap: NumberField = {
  kind: 'number',
  path: 'gapMm',
  title: 'Gap',
  unit: 'mm',
  min: 2,
  max: 400,
  step: 0.1,
  value: 24.4,
};
const none = { shiftKey: false, altKey: false };

test('an arrow moves a setting by its step, Shift by ten, Alt by a tenth', () => {
  expect(stepped(gap, 1, none)).toBe(24.5);
  expect(stepped(gap, -1, { ...none, shiftKey: true })).toBe(23.4);
  expect(stepped(gap, 1, { ...none, altKey: true })).toBe(24.41);
});

test('steps leave no dust of binary numbers and never leave the range', () => {
  fc.assert(
    fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), (value) => {
      const at = settled(value, gap);
      return at >= 2 && at <= 400 && String(at).length <= 5;
    }),
  );
});

test('a field shows the decimals of its unit, and more only where the value has them', () => {
  expect(inField(24, gap)).toBe('24.0');
  expect(inField(24.41, gap)).toBe('24.41');
  expect(inField(-3, { unit: 'mm' })).toBe('−3.0');
  expect(inField(1150, { unit: 'C' })).toBe('1150');
});
