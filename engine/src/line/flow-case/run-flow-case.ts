import { ok, type Result } from '../../outcome/result.ts';
import type { FlowProblem } from '../../phenomena/metal-flow/problem.ts';
import { rollPass } from '../../phenomena/metal-flow/roll-pass.ts';
import type { FlowSolution } from '../../phenomena/metal-flow/solution.ts';
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

/** A case with its answer. */
export interface SolvedCase {
  readonly problem: FlowProblem;
  readonly solution: FlowSolution;
}

/** Solves the pass of a case. Fails as the mesher and the metal-flow model fail: with a reason, never with a guess. */
export function solveFlowCase(given: FlowCase, progress?: FlowCaseWishes['progress']): Result<SolvedCase> {
  const stated = problemOf(given);
  if (!stated.ok) return stated;
  const problem = { ...stated.value, wishes: { ...stated.value.wishes, ...(progress ? { progress } : {}) } };
  const solution = rollPass(problem);
  return solution.ok ? ok({ problem, solution: solution.value }) : solution;
}

/** Solves the pass of a case and writes down what came out. */
export function runFlowCase(
  given: FlowCase,
  { slices = false, progress }: FlowCaseWishes = {},
): Result<FlowRecord> {
  const solved = solveFlowCase(given, progress);
  return solved.ok ? ok(flowRecord(given, solved.value.problem, solved.value.solution, slices)) : solved;
}
