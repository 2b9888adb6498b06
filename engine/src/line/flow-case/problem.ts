import { ok, type Result } from '../../outcome/result.ts';
import { quadMeshOfAbout } from '../../phenomena/metal-flow/meshing/quads.ts';
import type { BiteHeat, FlowProblem, FlowSteel } from '../../phenomena/metal-flow/problem.ts';
import type { QuadMesh } from '../../phenomena/metal-flow/quad-mesh.ts';
import { flowRoll } from './case-roll.ts';
import { flowSteelOf, steelHeat } from './case-steel.ts';
import { outlineOfSection } from './entering-section.ts';
import { type FlowCase, linesOf, usualNodes, usualSlices } from './flow-case.ts';

/** A case as the flow model takes it: meshed, uniform temperature and strain. Fails when it cannot be meshed. */
export function problemOf(given: FlowCase): Result<FlowProblem> {
  const steel = flowSteelOf(given.steel);
  if (!steel.ok) return steel;
  const outline = outlineOfSection(given.section);
  const mesh = quadMeshOfAbout(outline, linesOf(given.symmetry), given.nodes ?? usualNodes);
  return mesh.ok ? ok(stated(given, steel.value, mesh.value)) : mesh;
}

function stated(given: FlowCase, steel: FlowSteel, mesh: QuadMesh): FlowProblem {
  const uniform = (value: number) => new Float64Array(mesh.xy.length / 2).fill(value);
  return {
    mesh,
    temperature: uniform(given.steel.temperature),
    strain: uniform(given.steel.strain ?? 0),
    steel,
    rolls: given.rolls.map(flowRoll),
    ...(given.tension ? { tension: given.tension } : {}),
    ...(given.heat ? { heat: heatOf(given, given.heat) } : {}),
    wishes: { slices: given.slices ?? usualSlices },
  };
}

const heatOf = ({ steel }: FlowCase, heat: NonNullable<FlowCase['heat']>): BiteHeat => ({
  ...steelHeat(steel),
  ...heat,
});
