import { expect, test } from 'vitest';
import { z } from 'zod';
import { choice, group, optionalQuantity, quantities, quantity, without } from './group.ts';
import { issuesOf } from './issue.ts';

const Box = group({
  family: z.literal('box'),
  height: quantity('mm', 'Height', 1, 400),
  offsets: quantities('mm', 'Offsets', -20, 60),
  temperature: optionalQuantity('C', 'Temperature', 0, 1300),
});
const Flat = group({ family: z.literal('flat'), gap: quantity('mm', 'Gap', 2, 400) });
const Pass = group({
  name: z.string(),
  speed: quantity('mPerS', 'Speed', 0, 10),
  groove: choice('family', [Box, Flat]),
});

const written = {
  name: 'B1',
  speedMPerS: 3,
  groove: { family: 'box', heightMm: 24.4, offsetsMm: [11.8, 8.6] },
} as const;

test('keys carry units in a file and none inside, where values are SI', () => {
  expect(Pass.parse(written)).toEqual({
    name: 'B1',
    speed: 3,
    groove: {
      family: 'box',
      height: expect.closeTo(0.0244, 12),
      offsets: [expect.closeTo(0.0118, 12), expect.closeTo(0.0086, 12)],
    },
  });
});

test('what was read is written back exactly as it stood', () => {
  expect(z.encode(Pass, Pass.parse(written))).toEqual(written);
});

test('the JSON Schema states unit, title and limits of every quantity', () => {
  const schema = z.toJSONSchema(Flat, { io: 'input' });
  expect(schema.properties?.gapMm).toMatchObject({ title: 'Gap', unit: 'mm', minimum: 2, maximum: 400 });
});

test('every problem is told at once, with path, value, unit and limit', () => {
  const input = {
    name: 7,
    speedMPerS: 30,
    groove: { family: 'box', heightMm: Number.NaN, offsetsMm: [99], depth: 1 },
  };
  const parsed = Pass.safeParse(input);
  const issues = parsed.error ? issuesOf(parsed.error, input) : [];
  expect(issues.map(({ path }) => path)).toEqual([
    'name',
    'speedMPerS',
    'groove.heightMm',
    'groove.offsetsMm.0',
    'groove.depth',
  ]);
  expect(issues[1]).toMatchObject({ value: 30, unit: 'm/s', limit: '10 or less' });
  expect(issues[3]).toMatchObject({ value: 99, unit: 'mm', limit: '60 or less' });
  expect(issues[4].message).toContain('groove.depth is 1; allowed: nothing');
});

test('a value that is said elsewhere can be left out of a group', () => {
  expect(without(Flat, 'gap').parse({ family: 'flat' })).toEqual({ family: 'flat' });
});
