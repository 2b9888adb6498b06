import type { FlowProblem } from '../../../phenomena/metal-flow/problem.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import type { Ahead } from './ahead.ts';

/** What metal flow adds to a pass: what was known before, the question, and the answer. */
export interface Flowed {
  readonly ahead: Ahead;
  readonly problem: FlowProblem;
  readonly solution: FlowSolution;
}
