import { readFileSync } from 'node:fs';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { expect, test } from 'vitest';
import { mendingFields } from './mending-fields.ts';
import { withValueAt } from './plan-file.ts';

const file = new URL('../../../examples/60e1-heavy-rail/plan.json', import.meta.url);
const plan = JSON.parse(readFileSync(file, 'utf8'));

test('values that do not fit can be mended where they are explained, settings and mill alike', () => {
  const paths = ['settings.passes.2.gapMm', 'mill.descaler.standOffMm'];
  const broken = paths.reduce((at, path) => withValueAt(at, path, 9000), plan);
  const reading = readPlan(broken);
  const fields = mendingFields(broken, reading.ok ? [] : reading.issues);
  expect(fields.map(({ path }) => path).sort()).toEqual([...paths].sort());
});
