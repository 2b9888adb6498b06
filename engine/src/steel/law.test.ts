import { expect, test } from 'vitest';
import { calibrated } from './flow-stress.ts';
import { outsideValidity } from './law.ts';
import { shida } from './shida.ts';

test('a law used inside its range has nothing to say', () => {
  expect(outsideValidity(shida(0.71), { temperature: 950, rate: 10, strain: 0.3, carbon: 0.71 })).toEqual([]);
});

test('a law used outside its range gives a note with value, limit and unit, and still an answer', () => {
  const [note, ...others] = outsideValidity(shida(0.71), { temperature: 1230, rate: 10 });
  expect(others).toEqual([]);
  expect(note).toMatchObject({ level: 'note', check: 'law-validity', value: 1230, limit: 1200, unit: 'C' });
  expect(note.text).toBe('Shida is used at a temperature of 1 230 °C, outside its range 700 to 1200 °C.');
  expect(shida(0.71).stress(0.3, 10, 1230)).toBeGreaterThan(0);
});

test('both ends of a range are watched, and a calibrated law keeps its range', () => {
  const law = calibrated(shida(0.71), 1.07);
  expect(outsideValidity(law, { rate: 0.05, strain: 0.9 }).map((note) => note.limit)).toEqual([0.1, 0.7]);
});
