import { expect, test } from 'vitest';
import { inLines } from './in-lines.ts';

test('a number keeps its unit on its line', () => {
  expect(inLines('Bite angle 20.5 °, limit 21.8 °', 17, 2)).toEqual(['Bite angle', '20.5\u00a0°, limit …']);
});

test('what does not fit ends between two words', () => {
  expect(inLines('Temperatures were shifted to keep the heat', 18, 2)).toEqual([
    'Temperatures were',
    'shifted to keep …',
  ]);
  expect(inLines('Straighteners', 20, 1)).toEqual(['Straighteners']);
});
