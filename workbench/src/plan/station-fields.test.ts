import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { Json } from './plan-file.ts';
import { stationFields } from './station-fields.ts';

const plan = (name: string): Json & { settings: { passes: Record<string, Json>[] } } =>
  JSON.parse(
    readFileSync(fileURLToPath(new URL(`../../../examples/${name}/plan.json`, import.meta.url)), 'utf8'),
  );
const pulls = (given: Json, pass: number) =>
  stationFields(given, `settings.passes.${pass}`).filter(({ path }) => path.endsWith('TensionMpa'));

test('pulls can be moved only where metal flow computes the pass, and say that there are none', () => {
  const byHandbook = plan('60e1-heavy-rail');
  expect(pulls(byHandbook, 2)).toEqual([]);
  byHandbook.settings.passes[2].model = 'flow';
  expect(pulls(byHandbook, 2)).toHaveLength(2);
  expect(pulls(byHandbook, 2)[0]).toMatchObject({ value: undefined, leftOut: 'none' });

  const byFlow = plan('60e1-by-metal-flow');
  expect(pulls(byFlow, 2)).toHaveLength(2);
  byFlow.settings.passes[2].model = 'handbook';
  expect(pulls(byFlow, 2)).toEqual([]);
});
