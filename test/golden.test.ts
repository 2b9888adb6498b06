import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { writeRun } from '@bloomrail/engine/line/records';
import { runWholeLine } from '@bloomrail/engine/line/run-line';
import { expect, test } from 'vitest';
import { examplePlan } from './support/examples.ts';
import { readable } from './support/readable.ts';

const golden = fileURLToPath(new URL('./golden/60e1-heavy-rail.txt', import.meta.url));

/** Changed on purpose? `GOLDEN=write npx vitest run test/golden.test.ts`, then read the difference before it is kept. */
test('the example rolls as it did: golden record, rounded to four figures', () => {
  const result = runWholeLine(examplePlan('60e1-heavy-rail'));
  if (!result.ok) throw new Error(result.failure.reason);
  const text = readable(writeRun(result.value));
  if (process.env.GOLDEN === 'write') writeFileSync(golden, text);
  expect(text).toBe(readFileSync(golden, 'utf8'));
});
