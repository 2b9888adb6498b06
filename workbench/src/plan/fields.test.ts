import { choice, group, quantities, quantity } from '@bloomrail/engine/units/group';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { fieldsOf, type Schema } from './fields.ts';

const Groove = choice('family', [
  group({ family: z.literal('box'), depth: quantity('mm', 'Depth', 1, 200) }),
  group({ family: z.literal('flat'), width: quantity('mm', 'Width', 1, 900) }),
]);
const Pass = group({
  name: z.string(),
  gap: quantity('mm', 'Gap between the rolls', 2, 400),
  offsets: quantities('mm', 'Offset', -20, 60),
  zones: z.array(group({ temperature: quantity('C', 'Zone temperature', 20, 1400) })),
  pose: z.enum(['on-side', 'standing']).meta({ title: 'Pose' }),
  turn: z.union([z.literal(0), z.literal(90)]).meta({ title: 'Turn' }),
  water: z.boolean(),
  samples: z.number().int().min(0).max(10).meta({ title: 'Test pieces' }),
  groove: Groove,
});
const written = {
  name: 'U2',
  gapMm: 24.4,
  offsetsMm: [1, 2],
  zones: [{ temperatureC: 890 }, { temperatureC: 1150 }],
  pose: 'standing',
  turn: 90,
  water: true,
  samples: 1,
  groove: { family: 'flat', widthMm: 500 },
};
const fields = fieldsOf(Pass as Schema, written, 'settings.passes.3');

test('every movable value of a group becomes one field, in the order it is declared', () => {
  expect(fields.map((field) => field.title)).toEqual([
    'Gap between the rolls',
    'Offset, 1',
    'Offset, 2',
    'Zone temperature, 1',
    'Zone temperature, 2',
    'Pose',
    'Turn',
    'water',
    'Test pieces',
    'Width',
  ]);
});

test('a field knows its place in the file, its unit, range and step', () => {
  expect(fields[0]).toEqual({
    kind: 'number',
    path: 'settings.passes.3.gapMm',
    title: 'Gap between the rolls',
    unit: 'mm',
    min: 2,
    max: 400,
    step: 0.1,
    value: 24.4,
  });
  expect(fields[4].path).toBe('settings.passes.3.zones.1.temperatureC');
  expect(fields[9].path).toBe('settings.passes.3.groove.widthMm');
});

test('a choice offers its words, a count keeps its range', () => {
  expect(fields[5]).toMatchObject({ kind: 'choice', options: ['on-side', 'standing'], value: 'standing' });
  expect(fields[6]).toMatchObject({ options: [0, 90], value: 90 });
  expect(fields[7]).toMatchObject({ options: [true, false], value: true });
  expect(fields[8]).toMatchObject({ min: 0, max: 10, step: 1, value: 1 });
});
