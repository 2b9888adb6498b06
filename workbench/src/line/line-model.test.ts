import type { Measure } from '@bloomrail/engine/bar/measure';
import type { Visit } from '@bloomrail/engine/line/visit';
import type { Finding } from '@bloomrail/engine/outcome/finding';
import { expect, test } from 'vitest';
import type { Station } from '../compute/progress.ts';
import { countsOf, foremost, runsOf, stopsOfLine } from './line-model.ts';
import { stopInWords } from './line-words.ts';

const place = { clock: 128, mean: 1018, surface: 948, core: 1064, coldest: 930, hottest: 1066 };
const square = [
  [0, 0],
  [0.1, 0],
  [0.1, 0.1],
  [0, 0.1],
].map(([x, y]) => ({ x, y, bulge: 0 }));

const measure = (name: string, part: string, value: number, limit?: number): Measure => ({
  name,
  part,
  unit: 'kN',
  value,
  law: '',
  sure: 'computed',
  ...(limit === undefined ? {} : { limit }),
});

function station(
  code: string,
  group: Station['group'],
  measures: Measure[],
  findings: Finding[] = [],
): Station {
  const leaving = {
    outline: { vertices: square },
    area: 0.01,
    length: 67.3,
    mass: 5000,
    pieces: [67.3],
    places: { head: place, middle: place, tail: place },
  };
  const visit = { code, record: { kind: 'pass', firstEnd: 'tail', leaving, measures, findings } };
  return {
    code,
    title: 'Second universal pass',
    group,
    path: '',
    state: 'now',
    visit: visit as unknown as Visit,
  };
}

const finding = (level: Finding['level'], text: string): Finding => ({
  level,
  check: text,
  text,
  advice: '',
});
const loads = [
  measure('force', 'horizontal', 5, 6),
  measure('force', 'foot roll', 3, 3),
  measure('torque', '', 1, 2),
];
const found = [finding('note', 'Not calibrated.'), finding('outside', 'Force 3 kN, limit 3.')];
const line = [
  station('B1', 'breakdown', []),
  station('U1', 'universal', []),
  station('U2', 'universal', loads, found),
];

test('the load of a station is that of the roll nearest to its limit', () => {
  const [, , u2] = stopsOfLine(line);
  expect(u2.loads).toEqual({ force: 1, torque: 0.5, largest: 1 });
  expect(stopsOfLine(line)[0].loads).toEqual({});
});

test('the most serious finding of a station stands for all of them, and all are counted', () => {
  expect(foremost(found)).toEqual({ finding: found[1], others: 1 });
  expect(countsOf(stopsOfLine(line))).toEqual({ outside: 1, near: 0, note: 1 });
});

test('neighbouring stations of one group share one bracket', () => {
  expect(runsOf(stopsOfLine(line))).toEqual([
    { group: 'breakdown', from: 0, to: 0 },
    { group: 'universal', from: 1, to: 2 },
  ]);
});

test('a station is told in one breath: name, heat, length, what matters most', () => {
  expect(stopInWords(stopsOfLine(line)[2])).toBe(
    'U2, Second universal pass; mean 1 018 °C, 67.3 m; outside: Force 3 kN, limit 3.',
  );
  expect(stopInWords(stopsOfLine(line, 'B1')[0])).toContain('the model has no answer here');
});
