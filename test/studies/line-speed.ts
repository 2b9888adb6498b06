// How long the example takes: first run in a fresh process, warm, and after a changed gap.
//     npx tsx test/studies/line-speed.ts
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { type Memory, runLine, runWholeLine } from '@bloomrail/engine/line/run-line';
import { exampleContent } from '../support/examples.ts';

type Content = { settings: { passes: { code: string; gapMm: number }[] } };
const content = exampleContent('60e1-heavy-rail') as Content;

function planOf(from: unknown) {
  const reading = readPlan(from);
  if (!reading.ok) throw new Error(reading.issues[0].message);
  return reading.plan;
}

function timed<T>(work: () => T): { ms: number; value: T } {
  const start = performance.now();
  const value = work();
  return { ms: performance.now() - start, value };
}

/** ms until the changed pass has its answer, and until the line has ended. */
function afterMove(pass: number, by: number, memory: Memory): { own: number; all: number } {
  const moved = structuredClone(content);
  moved.settings.passes[pass].gapMm += by;
  const start = performance.now();
  const line = runLine(planOf(moved), memory);
  let own = 0;
  for (let step = line.next(); !step.done; step = line.next()) {
    if (step.value.code === moved.settings.passes[pass].code) own = performance.now() - start;
  }
  return { own, all: performance.now() - start };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];
const row = (what: string, ms: number): string => `| ${what} | ${ms.toFixed(0)} |`;

const first = timed(() => runWholeLine(planOf(content)));
if (!first.value.ok) throw new Error(first.value.failure.reason);
const memory = first.value.value.memory;
const warm = median([1, 2, 3, 4, 5].map(() => timed(() => runWholeLine(planOf(content))).ms));
const lines = [
  '| what | ms |',
  '|---|---|',
  row('whole line, first run in a fresh process', first.ms),
  row('whole line, warm, median of 5', warm),
];
for (const [i, { code }] of content.settings.passes.entries()) {
  if (!['B1', 'K2', 'U2', 'UF'].includes(code)) continue;
  const moves = [0.1, 0.2, 0.3, -0.1, -0.2].map((by) => afterMove(i, by, memory));
  lines.push(row(`gap of ${code} moved: answer of the pass`, median(moves.map(({ own }) => own))));
  lines.push(row(`gap of ${code} moved: answer of the line`, median(moves.map(({ all }) => all))));
}
console.log(lines.join('\n'));
