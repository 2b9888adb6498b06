// Ten thousand damaged plans, each read and, where it can be read, run to its end. Takes about half an hour.
//     npx tsx test/studies/damaged-plans.ts [count]
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { runWholeLine } from '@bloomrail/engine/line/run-line';
import fc from 'fast-check';
import { damaged, damages } from '../support/damage.ts';
import { exampleContent, examplePlan } from '../support/examples.ts';
import { allFinite } from '../support/finite.ts';

const seed = 2026;
const count = Number(process.argv[2] ?? 10_000);
const name = '60e1-heavy-rail';
const content = exampleContent(name);
const sound = runWholeLine(examplePlan(name));
const before = sound.ok ? sound.value.memory : undefined;

const tally = { issues: 0, records: 0, reasons: 0, crashes: 0, notFinite: 0 };
const reasons = new Map<string, number>();
let slowest = 0;

fc.sample(damages(content), { seed, numRuns: count }).forEach((blows, i) => {
  const start = performance.now();
  try {
    judge(damaged(content, blows));
  } catch (cause) {
    tally.crashes++;
    console.log(`plan ${i}: ${(cause as Error).stack}`);
  }
  slowest = Math.max(slowest, performance.now() - start);
  if (i % 500 === 499 || i === count - 1) write(i + 1);
});

function judge(plan: unknown): void {
  const reading = readPlan(plan);
  if (!reading.ok) {
    tally.issues++;
    return;
  }
  const result = runWholeLine(reading.plan, before);
  if (!allFinite(result)) tally.notFinite++;
  if (result.ok) tally.records++;
  else {
    tally.reasons++;
    const { code, model, reason } = result.failure;
    const words = `${code}, ${model}: ${reason.replace(/[−-]?\d[\d.,  ]*/g, '# ')}`;
    reasons.set(words, (reasons.get(words) ?? 0) + 1);
  }
}

/** The table so far: a study that is broken off leaves what it found. */
function write(done: number): void {
  const rows = [...reasons].sort(([, a], [, b]) => b - a).map(([words, times]) => `| ${times} | ${words} |`);
  const text = `# ${done.toLocaleString('en')} damaged plans

\`npx tsx test/studies/damaged-plans.ts\`, fast-check seed ${seed}: one to three places of the example plan are removed, scaled, shifted or
replaced by something nobody expects; half of the blows hit numbers.

| outcome | plans |
|---|---|
| a list of issues with path, value, unit and limit | ${tally.issues} |
| records with findings, to the end of the line | ${tally.records} |
| a station says why it has no answer | ${tally.reasons} |
| a number that is not finite anywhere in the answer | ${tally.notFinite} |
| crash | ${tally.crashes} |

The slowest took ${(slowest / 1000).toFixed(1)} s; none hung.

Reasons given, with their numbers left out:

| times | station, model: reason |
|---|---|
${rows.join('\n')}
`;
  writeFileSync(fileURLToPath(new URL('./damaged-plans.md', import.meta.url)), text);
  console.log(`${done} of ${count}: ${JSON.stringify(tally)}`);
}
