import { readPlan } from '@bloomrail/engine/line/read-plan';
import { writeRun } from '@bloomrail/engine/line/records';
import { type LineRun, runLine } from '@bloomrail/engine/line/run-line';
import { stopsOf } from '@bloomrail/engine/line/stops';
import { cautions } from '@bloomrail/sheets/cautions';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { findingsText } from '../print/findings.ts';
import { lineTable, summaryText } from '../print/line.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { progressOf } from '../progress.ts';
import { readJson } from '../read-json.ts';

export interface RunOptions {
  readonly json: boolean;
  readonly strict: boolean;
}

/** `bloomrail run PLAN`: the whole line, from furnace to bundle. */
export function run(file: string, options: RunOptions, output: Output): ExitCode {
  const content = readJson(file);
  if (!content.ok) return refuseInput(output, content.issues, options.json);
  const reading = readPlan(content.value);
  if (!reading.ok) return refuseInput(output, reading.issues, options.json);
  const progress = progressOf(output, stopsOf(reading.plan).length);
  const line = runLine(reading.plan);
  let step = line.next();
  for (; !step.done; step = line.next()) progress.step(`${step.value.code} ${step.value.title}`);
  progress.end();
  const result = step.value;
  if (!result.ok) return noAnswer(output, result.failure, options.json);
  output.out(options.json ? JSON.stringify(writeRun(result.value), null, 2) : textOf(result.value));
  return options.strict && mustNotRun(result.value) ? exitCode.stopped : exitCode.computed;
}

const textOf = (run: LineRun): string =>
  [lineTable(run.visits), summaryText(run), findingsText(run.visits), cautions.join(' ')].join('\n\n');

const mustNotRun = ({ visits }: LineRun): boolean =>
  visits.some(({ record }) => record.findings.some(({ stop }) => stop === true));
