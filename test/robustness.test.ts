import { readPlan } from '@bloomrail/engine/line/read-plan';
import { type Memory, runWholeLine } from '@bloomrail/engine/line/run-line';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { damaged, damages } from './support/damage.ts';
import { exampleContent, examplePlan } from './support/examples.ts';
import { allFinite } from './support/finite.ts';

const name = '60e1-heavy-rail';
const content = exampleContent(name);

test('10 000 damaged plans: each is a plan, or a list of issues with path, limit and words', {
  timeout: 300_000,
}, () => {
  let read = 0;
  fc.assert(
    fc.property(damages(content), (blows) => {
      const reading = readPlan(damaged(content, blows));
      if (reading.ok) read++;
      else {
        expect(reading.issues.length).toBeGreaterThan(0);
        for (const { path, limit, message } of reading.issues) {
          expect(typeof path).toBe('string');
          expect(limit.length).toBeGreaterThan(0);
          expect(message).toContain(path);
        }
      }
    }),
    { seed: 2026, numRuns: 10_000 },
  );
  expect(read).toBeGreaterThan(1000);
});

test('damaged plans that can be read end in records with findings or in a reason, never in a crash or NaN', {
  timeout: 300_000,
}, () => {
  const memory = runWholeLine(examplePlan(name));
  const before: Memory | undefined = memory.ok ? memory.value.memory : undefined;
  fc.assert(
    fc.property(damages(content), (blows) => {
      const reading = readPlan(damaged(content, blows));
      fc.pre(reading.ok);
      const result = runWholeLine(reading.plan, before);
      if (result.ok) expect(allFinite(result.value.visits)).toBe(true);
      else {
        expect(result.failure.reason.length).toBeGreaterThan(10);
        expect(allFinite(result.failure.visits)).toBe(true);
      }
    }),
    { seed: 41, numRuns: 60, maxSkipsPerRun: 30 },
  );
});
