import type { Failure } from '@bloomrail/engine/outcome/result';
import type { Issue } from '@bloomrail/engine/units/issue';
import { type ExitCode, exitCode } from '../exit-code.ts';

/** Where a command writes: answers to `out`, everything about the work itself to `notice`. */
export interface Output {
  readonly out: (text: string) => void;
  readonly notice: (text: string) => void;
  /** True where a person looks on and the bar of a long run may be drawn. */
  readonly watched: boolean;
}

export const processOutput: Output = {
  out: (text) => process.stdout.write(`${text}\n`),
  notice: (text) => process.stderr.write(`${text}\n`),
  watched: process.stderr.isTTY === true,
};

export function refuseInput(output: Output, issues: readonly Issue[], json: boolean): ExitCode {
  if (json) output.out(JSON.stringify({ issues }, null, 2));
  else {
    output.notice(`${issues.length} ${issues.length === 1 ? 'entry' : 'entries'} to mend:`);
    for (const { message } of issues) output.notice(`  ${message}`);
  }
  return exitCode.badInput;
}

export function noAnswer(
  output: Output,
  failure: Failure & { readonly code?: string },
  json: boolean,
): ExitCode {
  const { model, reason, residual, iterations, code } = failure;
  if (json)
    output.out(JSON.stringify({ failure: { station: code, model, reason, residual, iterations } }, null, 2));
  else output.notice(`No answer${code ? ` at ${code}` : ''}: ${model}: ${reason}`);
  return exitCode.noAnswer;
}
