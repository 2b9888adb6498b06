import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { StationCase } from '@bloomrail/engine/line/case';
import { FlowCase } from '@bloomrail/engine/line/flow-case/flow-case';
import { FlowRecord } from '@bloomrail/engine/line/flow-case/record';
import { Plan } from '@bloomrail/engine/line/plan';
import { recordSchemas } from '@bloomrail/engine/line/records';
import { Summary } from '@bloomrail/engine/line/summary';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';

const folder = fileURLToPath(new URL('../reference/schemas/', import.meta.url));
const schemas: Readonly<Record<string, z.ZodType>> = {
  plan: Plan,
  'station-case': StationCase,
  'flow-case': FlowCase,
  'record-flow-pass': FlowRecord,
  summary: Summary,
  ...Object.fromEntries(Object.entries(recordSchemas).map(([kind, schema]) => [`record-${kind}`, schema])),
};

/** Changed a group? `SCHEMAS=write npx vitest run test/schemas.test.ts` writes the files anew. */
describe('JSON Schema files say what the code says', () => {
  test.each(Object.entries(schemas))('%s', (name, schema) => {
    const text = `${JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), null, 1)}\n`;
    const file = `${folder}${name}.schema.json`;
    if (process.env.SCHEMAS === 'write') {
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, text);
    }
    expect(readFileSync(file, 'utf8')).toBe(text);
  });
});

interface Node {
  readonly type?: string;
  readonly unit?: string;
  readonly title?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly properties?: Readonly<Record<string, Node>>;
}

/** Every number of a schema with its path. */
function numbersIn(node: unknown, path = ''): [string, Node][] {
  if (typeof node !== 'object' || node === null) return [];
  const { properties } = node as Node;
  const own = Object.entries(properties ?? {}).filter(([, part]) => part.type === 'number');
  const found = own.map(([key, part]): [string, Node] => [`${path}.${key}`, part]);
  return [...found, ...Object.entries(node).flatMap(([key, part]) => numbersIn(part, `${path}.${key}`))];
}

test('every number of a plan has a title, a unit and limits', () => {
  const numbers = numbersIn(z.toJSONSchema(Plan, { io: 'input' }));
  expect(numbers.length).toBeGreaterThan(150);
  for (const [path, number] of numbers) {
    expect(number, path).toMatchObject({ title: expect.any(String), unit: expect.any(String) });
    expect(number.minimum, path).toBeTypeOf('number');
    expect(number.maximum, path).toBeTypeOf('number');
  }
});
