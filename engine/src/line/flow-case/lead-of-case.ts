import type { Finding } from '../../outcome/finding.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { rollPass } from '../../phenomena/metal-flow/roll-pass.ts';
import { leadSteel } from '../../phenomena/metal-flow/similarity/lead-steel.ts';
import {
  type CompareAt,
  hotSide,
  scaledDown,
  stressRatio,
  toHotBar,
} from '../../phenomena/metal-flow/similarity/model-block.ts';
import { similarityNotes } from '../../phenomena/metal-flow/similarity/similarity-notes.ts';
import type { FlowSolution, RollLoads } from '../../phenomena/metal-flow/solution.ts';
import { biteRate } from './over-section.ts';
import type { SolvedCase } from './run-flow-case.ts';

/** The pass of a case rolled as a block of lead, and what it says of the hot bar. */
export interface LeadBlockRolled {
  /** Length of the block over that of the bar. */
  readonly scale: number;
  /** Flow stress of the hot bar over that of lead, at the mean strain and rate of the pass. */
  readonly ratio: number;
  readonly at: CompareAt;
  readonly block: FlowSolution;
  /** Loads read on the block, carried over to the hot bar. */
  readonly carried: readonly RollLoads[];
  readonly notes: readonly Finding[];
}

/** Rolls the same pass in lead at room temperature, every length times `scale` (0 < scale ≤ 1), rolls turning alike. */
export function leadBlockOf({ problem, solution }: SolvedCase, scale: number): Result<LeadBlockRolled> {
  const model = scaledDown(problem, scale, leadSteel());
  const rolled = rollPass(model);
  if (!rolled.ok) return rolled;
  const at = meanOf(solution);
  const ratio = stressRatio(hotSide(problem), hotSide(model), at);
  const carried = rolled.value.rolls.map((loads) => toHotBar(loads, scale, ratio));
  return ok({ scale, ratio, at, block: rolled.value, carried, notes: similarityNotes(problem, model, at) });
}

/** Half of the strain on leaving, and the mean rate where rolls touch. */
function meanOf(solution: FlowSolution): CompareAt {
  let sum = 0;
  for (const each of solution.strain) sum += each;
  return { strain: sum / solution.strain.length / 2, rate: biteRate(solution) };
}
