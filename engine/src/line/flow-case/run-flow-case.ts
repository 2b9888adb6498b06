import { ok, type Result } from '../../outcome/result.ts';
import { rollPass } from '../../phenomena/metal-flow/roll-pass.ts';
import type { FlowCase } from './flow-case.ts';
import { problemOf } from './problem.ts';
import type { FlowRecord } from './record.ts';
import { flowRecord } from './recording.ts';

export interface FlowCaseWishes {
  /** Every section of the bite in the record. */
  readonly slices?: boolean;
  /** Called with the share done, 0 to 1; returning false breaks off. */
  readonly progress?: (share: number) => boolean;
}

/** Solves the pass of a case. Fails as the mesher and the metal-flow model fail: with a reason, never with a guess. */
export function runFlowCase(
  given: FlowCase,
  { slices = false, progress }: FlowCaseWishes = {},
): Result<FlowRecord> {
  const stated = problemOf(given);
  if (!stated.ok) return stated;
  const problem = { ...stated.value, wishes: { ...stated.value.wishes, ...(progress ? { progress } : {}) } };
  const solution = rollPass(problem);
  return solution.ok ? ok(flowRecord(given, problem, solution.value, slices)) : solution;
}
