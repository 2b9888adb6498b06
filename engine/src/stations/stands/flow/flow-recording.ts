import type { Field } from '../../../outcome/field.ts';
import type { QuadMesh } from '../../../phenomena/metal-flow/quad-mesh.ts';
import { skin } from '../../../phenomena/metal-flow/quad-mesh.ts';
import { meanOfNodes } from '../../../phenomena/metal-flow/section-means.ts';
import type { FlowStep } from '../../../phenomena/metal-flow/solution.ts';
import { sectionProperties } from '../../../section/properties.ts';
import type { Course } from '../course.ts';
import type { VisitOfPlace } from '../visits.ts';
import { elementAreas } from './flow-elements.ts';
import type { FlowFilling } from './flow-filling.ts';
import type { FlowRecord } from './flow-record.ts';
import type { Flowed } from './flowed.ts';

export function flowRecordOf(
  { ahead, problem, solution }: Flowed,
  { outline, rollSpeed }: Course,
  { misfits }: FlowFilling,
  middle: VisitOfPlace,
): FlowRecord {
  const { quality, strain, bending } = solution;
  const { error: energyError, ...power } = solution.energy;
  const exit = solution.sections[solution.sections.length - 1];
  const { bounds } = sectionProperties(ahead.handbook.outline);
  const { force, footForce, headForce, torque } = middle.handbook;
  return {
    steel: problem.steel.name,
    nodes: quality.nodes,
    slices: quality.slices,
    marches: quality.marches,
    restarts: quality.restarts,
    rejected: quality.rejected,
    energyError,
    volumeDrift: quality.volumeDrift,
    largestShear: quality.largestShear,
    entrySpeed: solution.entrySpeed,
    exitSpeed: solution.exitSpeed,
    rollSpeed,
    entryTension: problem.tension?.entry ?? 0,
    exitTension: problem.tension?.exit ?? 0,
    power,
    bending: bending.momentY,
    meanStrain: meanOfNodes(solution, exit.xy, strain),
    largestStrain: Math.max(...strain),
    rolls: solution.rolls.map((load) => ({ ...load })),
    elements: elementAreas(ahead.prepared, outline, ahead.handbook.elements),
    misfits,
    handbook: {
      ...{ force, footForce, headForce, torque },
      elongation: ahead.handbook.elongation,
      width: bounds.right - bounds.left,
    },
    sections: solution.sections.map((section, i) => ({
      distance: section.distance,
      ...skinOf(solution.mesh, section.xy, solution.steps[Math.min(i, solution.steps.length - 1)]),
    })),
  };
}

/** Points of the skin in order around, to a hundredth of a millimetre and a tenth of a megapascal. */
function skinOf({ loop, lies }: QuadMesh, xy: Field, { contact }: FlowStep) {
  const pressures = new Map<number, number>();
  for (let c = 0; c < contact.node.length; c++) {
    pressures.set(contact.node[c], (pressures.get(contact.node[c]) ?? 0) + contact.pressure[c]);
  }
  const n = loop.length;
  const isSkin = (i: number) => lies[i % n] === skin;
  // Begins where the skin leaves a line of symmetry, so that its points follow each other.
  const start = Math.max(
    0,
    Array.from(loop).findIndex((_, i) => isSkin(i) && !isSkin(i + n - 1)),
  );
  const nodes = [loop[start]];
  for (let i = start; i < start + n && isSkin(i); i++) nodes.push(loop[(i + 1) % n]);
  return {
    x: nodes.map((node) => rounded(xy[2 * node], 1e-5)),
    y: nodes.map((node) => rounded(xy[2 * node + 1], 1e-5)),
    pressure: nodes.map((node) => rounded(pressures.get(node) ?? 0, 1e5)),
  };
}

const rounded = (value: number, step: number): number => Math.round(value / step) * step;
