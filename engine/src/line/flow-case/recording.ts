import type { FlowProblem } from '../../phenomena/metal-flow/problem.ts';
import { meanOfNodes } from '../../phenomena/metal-flow/section-means.ts';
import type { FlowSolution, RollLoads } from '../../phenomena/metal-flow/solution.ts';
import { outlineThrough } from '../../section/flatten.ts';
import { aheadShare } from './ahead-share.ts';
import { biteAngleOf } from './bite-angle.ts';
import { flowFindings } from './findings.ts';
import type { FlowCase } from './flow-case.ts';
import { grooveFill } from './groove-fill.ts';
import { biteRate, least, most, sideOf } from './over-section.ts';
import type { FlowRecord, RollLoadsRecord } from './record.ts';
import { sliceRecords } from './slice-records.ts';
import { touchedBy } from './touched.ts';

/** What a solved pass is remembered by; every slice of the bite as well when asked for. */
export function flowRecord(
  given: FlowCase,
  problem: FlowProblem,
  solution: FlowSolution,
  withSlices = false,
): FlowRecord {
  const { mesh, sections, energy, quality, bending, elongation, forwardSlip } = solution;
  const [first, last] = [sections[0], sections[sections.length - 1]];
  const [entry, exit] = [sideOf(solution, first), sideOf(solution, last)];
  const fill = grooveFill(problem.rolls, mesh.symmetry, exit.outline);
  const record: FlowRecord = {
    kind: 'flow-pass',
    title: given.title,
    steel: problem.steel.name,
    symmetry: given.symmetry,
    entry: { ...entry, speed: solution.entrySpeed },
    exit: { ...exit, speed: solution.exitSpeed },
    elongation,
    widthGain: exit.width - entry.width,
    forwardSlip,
    ...(fill ? { fill } : {}),
    rolls: solution.rolls.map((loads, r) => rollRecord(problem, solution, loads, r)),
    temperature: { least: least(solution.temperature), most: most(solution.temperature) },
    strain: { mean: meanOfNodes(solution, last.xy, solution.strain), most: most(solution.strain) },
    strainRate: biteRate(solution),
    bending,
    energy,
    quality,
    ...(withSlices ? { slices: sliceRecords(problem, solution) } : {}),
    findings: [],
  };
  return { ...record, findings: flowFindings(given, problem, record) };
}

function rollRecord(
  { rolls }: FlowProblem,
  solution: FlowSolution,
  loads: RollLoads,
  r: number,
): RollLoadsRecord {
  const { side, turning, profile } = rolls[r];
  const biteAngle = biteAngleOf(rolls[r], solution, r);
  const ahead = aheadShare(r, solution);
  return {
    ...loads,
    side,
    idle: turning === 'idle',
    profile: outlineThrough(profile),
    touched: touchedBy(r, solution),
    ...(biteAngle === undefined ? {} : { biteAngle }),
    ...(ahead === undefined ? {} : { ahead }),
  };
}
