import { type ExitCode, exitCode } from '../exit-code.ts';
import { type Output, refuseInput } from '../print/output.ts';
import { readPlanFile } from '../read-plan-file.ts';

/** `bloomrail check PLAN`: whether the line could be computed, without computing it; every problem at once. */
export function check(file: string, options: { readonly json: boolean }, output: Output): ExitCode {
  const reading = readPlanFile(file);
  if (!reading.ok) return refuseInput(output, reading.issues, options.json);
  output.out(
    options.json
      ? JSON.stringify({ issues: [] }, null, 2)
      : `${file}: complete, every value inside its limits.`,
  );
  return exitCode.computed;
}
