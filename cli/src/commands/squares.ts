import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { squaresThroughLine } from '@bloomrail/engine/line/squares-through-line';
import type { Issue } from '@bloomrail/engine/units/issue';
import { cautions } from '@bloomrail/sheets/cautions';
import { drawnSquaresDrawing } from '@bloomrail/sheets/drawn-squares';
import { svgOf } from '@bloomrail/sheets/svg';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { progressOf } from '../progress.ts';
import { readPlanFile } from '../read-plan-file.ts';
import { withModel } from './run.ts';

export interface SquaresOptions {
  /** Folder for one drawing a pass. */
  readonly out: string;
  /** mm. */
  readonly side: number;
}

/** `bloomrail squares PLAN --out DIR`: squares drawn on the bloom, carried through all passes by metal flow. */
export function squares(file: string, { out, side }: SquaresOptions, output: Output): ExitCode {
  const reading = readPlanFile(file);
  const issues = [...(reading.ok ? [] : reading.issues), ...sideIssues(side)];
  if (!reading.ok || issues.length > 0) return refuseInput(output, issues, false);
  const plan = withModel(reading.value, 'flow');
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

const sideIssues = (side: number): Issue[] =>
  side > 0
    ? []
    : [
        {
          ...{ path: 'square-side', value: side, unit: 'mm', limit: '> 0' },
          message: `square-side is ${side} mm; squares need a side above 0 mm`,
        },
      ];
