/**
 * How well bed and straighteners hold to what they are measured against, as one table.
 *   npx tsx test/studies/cooling-and-straightening.ts        writes cooling-and-straightening.md beside it
 */
import { writeFileSync } from 'node:fs';
import {
  camberRows,
  conductionRows,
  fibreRows,
  missingRows,
  type Row,
  straightenerRows,
  transformationRows,
} from './cooling-rows';
import { railTables } from './rail-tables';

const rows: Row[] = [
  ...conductionRows(),
  ...transformationRows(),
  ...camberRows(),
  ...fibreRows(),
  ...straightenerRows(),
  ...missingRows,
];

const lines = [
  '# Cooling bed and straighteners against their references',
  '',
  'Made by `npx tsx test/studies/cooling-and-straightening.ts`; tests hold the same numbers (`npx vitest run engine/src/phenomena/bending engine/src/stations`). Times are processor time of the machine that wrote this page, while its cores were shared with other work; benchmarks: `npx vitest bench --run engine/src/stations/cooling-bed engine/src/stations/straighteners`. Nothing here is compared with a measured rail.',
  '',
  '| test | reached | held to | source of the value |',
  '|---|---|---|---|',
  ...rows.map(({ test, reached, held, source }) => `| ${test} | ${reached} | ${held} | ${source} |`),
  '',
  ...railTables(),
];
writeFileSync(new URL('cooling-and-straightening.md', import.meta.url), lines.join('\n'));
console.log(lines.join('\n'));
