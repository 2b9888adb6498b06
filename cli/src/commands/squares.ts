import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { squaresThroughLine } from '@bloomrail/engine/line/squares-through-line';
import { cautions } from '@bloomrail/sheets/cautions';
import { drawnSquaresDrawing } from '@bloomrail/sheets/drawn-squares';
import { svgOf } from '@bloomrail/sheets/svg';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { progressOf } from '../progress.ts';
import { readJson } from '../read-json.ts';
import { withModel } from './run.ts';

export interface SquaresOptions {
  /** Folder for one drawing a pass. */
  readonly out: string;
  /** mm. */
  readonly side: number;
}

/** `bloomrail squares PLAN --out DIR`: squares drawn on the bloom, carried through all passes by metal flow. */
export function squares(file: string, { out, side }: SquaresOptions, output: Output): ExitCode {
  const content = readJson(file);
  if (!content.ok) return refuseInput(output, content.issues, false);
  const reading = readPlan(content.value);
  if (!reading.ok) return refuseInput(output, reading.issues, false);
  if (!(side > 0)) {
    const message = `square-side is ${side} mm; squares need a side above 0 mm`;
    return refuseInput(output, [{ path: 'square-side', limit: '> 0 mm', message }], false);
  }
  const plan = withModel(reading.plan, 'flow');
  const progress = progressOf(output, plan.settings.passes.length);
  const passes = squaresThroughLine(plan, side / 1000);
  const drawings: { readonly name: string; readonly svg: string }[] = [];
  let step = passes.next();
  for (; !step.done; step = passes.next()) {
    const { code, title, drawn, now } = step.value;
    progress.step(`${code} ${title}`);
    const name = `${code} ${title}`;
    drawings.push({
      name: `${code}.svg`,
      svg: svgOf(drawnSquaresDrawing({ name, before: drawn, after: now })),
    });
  }
  progress.end();
  if (!step.value.ok) return noAnswer(output, step.value.failure, false);
  mkdirSync(out, { recursive: true });
  for (const { name, svg } of drawings) writeFileSync(join(out, name), svg);
  output.out(`Squares of ${side} mm drawn into ${out}: ${drawings.map(({ name }) => name).join(', ')}.`);
  output.out(cautions.join(' '));
  return exitCode.computed;
}
