import { writeFileSync } from 'node:fs';
import { readFlowCase } from '@bloomrail/engine/line/flow-case/read-flow-case';
import { type FlowRecord, writeFlowRecord } from '@bloomrail/engine/line/flow-case/record';
import { runFlowCase } from '@bloomrail/engine/line/flow-case/run-flow-case';
import { svgOf } from '@bloomrail/sheets/svg';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { flowDrawing } from '../print/flow-drawing.ts';
import { flowText } from '../print/flow-text.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { readJson } from '../read-json.ts';
import { station } from './station.ts';

export const passModels = ['handbook', 'flow'] as const;

export interface PassOptions {
  readonly json: boolean;
  readonly strict: boolean;
  readonly model: (typeof passModels)[number];
  /** Every section of the bite in the JSON. */
  readonly slices: boolean;
  /** File to draw the pass into, SVG. */
  readonly drawing?: string | undefined;
}

/** `bloomrail pass CASE`: by the handbook's laws from a station case, or by the metal-flow model from a case of its own. */
export function pass(file: string, options: PassOptions, output: Output): ExitCode {
  const content = readJson(file);
  if (!content.ok) return refuseInput(output, content.issues, options.json);
  if (options.model === 'flow') return flowPass(content.value, options, output);
  const needsFlow = flowOnly(content.value, options);
  if (!needsFlow) return station('pass', file, options, output);
  const message = `${needsFlow} belongs to the metal-flow model; ask with --model flow`;
  return refuseInput(output, [{ path: 'model', limit: '--model flow', message }], options.json);
}

/** What of a request only the metal-flow model can answer. */
function flowOnly(content: unknown, { slices, drawing }: PassOptions): string | undefined {
  if (typeof content === 'object' && content !== null && 'model' in content && content.model === 'flow')
    return 'this case';
  return slices ? '--slices' : drawing ? '--drawing' : undefined;
}

function flowPass(content: unknown, options: PassOptions, output: Output): ExitCode {
  const reading = readFlowCase(content);
  if (!reading.ok) return refuseInput(output, reading.issues, options.json);
  const result = runFlowCase(reading.value, { slices: options.slices });
  if (!result.ok) return noAnswer(output, result.failure, options.json);
  const record = result.value;
  output.out(options.json ? JSON.stringify(writeFlowRecord(record), null, 2) : flowText(record));
  if (options.drawing) draw(record, options.drawing, output);
  return options.strict && record.findings.some(({ stop }) => stop === true)
    ? exitCode.stopped
    : exitCode.computed;
}

function draw(record: FlowRecord, file: string, output: Output): void {
  writeFileSync(file, svgOf(flowDrawing(record)));
  output.notice(`Drawn into ${file}.`);
}
