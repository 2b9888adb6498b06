import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { bench } from 'vitest';
import { must } from '../../outcome/result.ts';
import { FlowCase } from './flow-case.ts';
import { solveFlowCase } from './run-flow-case.ts';

const examples = fileURLToPath(new URL('../../../../examples/one-pass/', import.meta.url));
const example = (name: string) => FlowCase.parse(JSON.parse(readFileSync(`${examples}${name}.json`, 'utf8')));

/** Meshing and every march; warm after the first run. Wanted: 0.5 s at 400 to 700 nodes, 0.1 s for a preview. */
const sizes = [
  ['universal-rail', 200, 10],
  ['universal-rail', 200, 20],
  ['universal-rail', 470, 20],
  ['universal-rail', 1200, 20],
  ['box-250-to-200', 440, 20],
] as const;

for (const [name, nodes, slices] of sizes) {
  const given = { ...example(name), nodes, slices };
  bench(
    `${name}, about ${nodes} nodes, ${slices} slices`,
    () => {
      must(solveFlowCase(given));
    },
    { iterations: 3, time: 0, warmupIterations: 1, warmupTime: 0 },
  );
}
