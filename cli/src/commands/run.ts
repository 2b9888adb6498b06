import type { Plan } from '@bloomrail/engine/line/plan';
import { writeRun } from '@bloomrail/engine/line/records';
import { type LineRun, runLine } from '@bloomrail/engine/line/run-line';
import { stopsOf } from '@bloomrail/engine/line/stops';
import type { passModels } from '@bloomrail/engine/stations/stands/settings';
import { cautions } from '@bloomrail/sheets/cautions';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { findingsText } from '../print/findings.ts';
import { flowTable } from '../print/flow-line.ts';
import { lineTable, summaryText } from '../print/line.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { progressOf } from '../progress.ts';
import { readPlanFile } from '../read-plan-file.ts';

type PassModelName = (typeof passModels)[number];

export interface RunOptions {
  readonly json: boolean;
  readonly strict: boolean;
  /** What computes the passes, whatever the plan says. */
  readonly model?: PassModelName | undefined;
}

/** `bloomrail run PLAN`: the whole line, from furnace to bundle. */
export function run(file: string, options: RunOptions, output: Output): ExitCode {
  const reading = readPlanFile(file);
  if (!reading.ok) return refuseInput(output, reading.issues, options.json);
  const plan = withModel(reading.value, options.model);
  const progress = progressOf(output, stopsOf(plan).length);
  const line = runLine(plan);
  let step = line.next();
  for (; !step.done; step = line.next()) progress.step(`${step.value.code} ${step.value.title}`);
  progress.end();
  const result = step.value;
  if (!result.ok) return noAnswer(output, result.failure, options.json);
  output.out(options.json ? JSON.stringify(writeRun(result.value), null, 2) : textOf(result.value));
  return options.strict && mustNotRun(result.value) ? exitCode.stopped : exitCode.computed;
}

/** The plan with all passes computed by one model. */
export function withModel(plan: Plan, model: PassModelName | undefined): Plan {
  if (!model) return plan;
  const passes = plan.settings.passes.map((pass) => ({ ...pass, model }));
  return { ...plan, settings: { ...plan.settings, passes } };
}

const textOf = (run: LineRun): string =>
  [
    lineTable(run.visits),
    flowTable(run.visits),
    summaryText(run),
    findingsText(run.visits),
    cautions.join(' '),
  ]
    .filter((part) => part !== undefined)
    .join('\n\n');

const mustNotRun = ({ visits }: LineRun): boolean =>
  visits.some(({ record }) => record.findings.some(({ stop }) => stop === true));
