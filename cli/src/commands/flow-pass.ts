import { writeFileSync } from 'node:fs';
import { leadBlockOf } from '@bloomrail/engine/line/flow-case/lead-of-case';
import { readFlowCase } from '@bloomrail/engine/line/flow-case/read-flow-case';
import { type FlowRecord, writeFlowRecord } from '@bloomrail/engine/line/flow-case/record';
import { flowRecord } from '@bloomrail/engine/line/flow-case/recording';
import { type SolvedCase, solveFlowCase } from '@bloomrail/engine/line/flow-case/run-flow-case';
import { squaresOf } from '@bloomrail/engine/line/flow-case/squares-of-case';
import { ok, type Result } from '@bloomrail/engine/outcome/result';
import type { passModels } from '@bloomrail/engine/stations/stands/settings';
import type { Issue } from '@bloomrail/engine/units/issue';
import { drawnSquaresDrawing } from '@bloomrail/sheets/drawn-squares';
import { svgOf } from '@bloomrail/sheets/svg';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { flowDrawing } from '../print/flow-drawing.ts';
import { flowText } from '../print/flow-text.ts';
import { leadText } from '../print/lead-text.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { readJson } from '../read-json.ts';
import { station } from './station.ts';

export interface PassOptions {
  readonly json: boolean;
  readonly strict: boolean;
  readonly model: (typeof passModels)[number];
  /** Every section of the bite in the JSON. */
  readonly slices: boolean;
  /** File to draw the pass into, SVG. */
  readonly drawing?: string | undefined;
  /** File to draw the squares of the entering section into, before and after, SVG; and their side, mm. */
  readonly squares?: string | undefined;
  readonly squareSide?: number | undefined;
  /** Roll a block of lead as well: its length over that of the bar, 0 to 1. */
  readonly lead?: number | undefined;
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
function flowOnly(content: unknown, { slices, drawing, squares, lead }: PassOptions): string | undefined {
  if (typeof content === 'object' && content !== null && 'model' in content && content.model === 'flow')
    return 'this case';
  if (squares) return '--squares';
  if (lead !== undefined) return '--lead';
  return slices ? '--slices' : drawing ? '--drawing' : undefined;
}

function flowPass(content: unknown, options: PassOptions, output: Output): ExitCode {
  const reading = readFlowCase(content);
  if (!reading.ok) return refuseInput(output, reading.issues, options.json);
  const badLead = leadIssue(options);
  if (badLead) return refuseInput(output, [badLead], options.json);
  const solved = solveFlowCase(reading.value);
  if (!solved.ok) return noAnswer(output, solved.failure, options.json);
  const { problem, solution } = solved.value;
  const record = flowRecord(reading.value, problem, solution, options.slices);
  const lead = options.lead === undefined ? undefined : leadBlockOf(solved.value, options.lead);
  if (lead && !lead.ok) return noAnswer(output, lead.failure, options.json);
  output.out(options.json ? JSON.stringify(writeFlowRecord(record), null, 2) : flowText(record));
  if (lead) output.out(leadText(lead.value, solution));
  if (options.drawing) draw(record, options.drawing, output);
  if (options.squares) {
    const drawn = drawSquares(reading.value.title, solved.value, options.squares, options.squareSide, output);
    if (!drawn.ok) return noAnswer(output, drawn.failure, options.json);
  }
  return options.strict && record.findings.some(({ stop }) => stop === true)
    ? exitCode.stopped
    : exitCode.computed;
}

/** What is wrong with the block of lead that is asked for. */
function leadIssue({ lead, json }: PassOptions): Issue | undefined {
  if (lead === undefined) return undefined;
  if (json) return { path: 'lead', limit: 'without --json', message: '--lead is told in words only' };
  if (lead > 0 && lead <= 1) return undefined;
  const message = `--lead is ${lead}; allowed: over 0 up to 1, 0.1 for a block 1 : 10`;
  return { path: 'lead', limit: '0 < lead ≤ 1', message };
}

function draw(record: FlowRecord, file: string, output: Output): void {
  writeFileSync(file, svgOf(flowDrawing(record)));
  output.notice(`Drawn into ${file}.`);
}

function drawSquares(
  name: string,
  solved: SolvedCase,
  file: string,
  side: number | undefined,
  output: Output,
): Result<void> {
  const squares = squaresOf(solved, side === undefined ? undefined : side / 1000);
  if (!squares.ok) return squares;
  writeFileSync(file, svgOf(drawnSquaresDrawing({ name, ...squares.value })));
  output.notice(`Squares drawn into ${file}.`);
  return ok(undefined);
}
