import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outOfRange, understand } from './number-input.ts';

const read = (text: string, unit: 'mm' | 'C' | 'bar' = 'mm') => {
  const understood = understand(text, unit);
  return understood.ok ? understood.value : understood.why;
};

test('point and comma, spaces and units are all read as meant', () => {
  expect(read('24.4')).toBe(24.4);
  expect(read(' 24,4 mm ')).toBe(24.4);
  expect(read('1 248')).toBe(1248);
  expect(read('−0,3')).toBe(-0.3);
  expect(read('1\u202f150 °C', 'C')).toBe(1150);
});

test('a length may be typed in another length unit', () => {
  expect(read('0.96 in')).toBeCloseTo(24.384, 9);
  expect(read('0.0244 m')).toBeCloseTo(24.4, 9);
});

test('a sum is added up', () => {
  expect(read('23.8+0.6')).toBe(24.4);
  expect(read('24.4-0.1-0.1')).toBe(24.2);
});

test('what is not a number is not guessed at', () => {
  for (const text of ['', 'wide', '1.2.3', '24 bar', '--3', '3+']) expect(typeof read(text)).toBe('string');
});

test('whatever number is printed is read back', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      (x) => read(x.toFixed(3)) === Number(x.toFixed(3)),
    ),
  );
});

test('a value outside the range says which end and how far', () => {
  const gap = { min: 2, max: 400, unit: 'mm' } as const;
  expect(outOfRange(1, gap)).toBe('At least 2 mm.');
  expect(outOfRange(401, gap)).toBe('At most 400 mm.');
  expect(outOfRange(24, gap)).toBeUndefined();
});
