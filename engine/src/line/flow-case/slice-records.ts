import type { FlowProblem } from '../../phenomena/metal-flow/problem.ts';
import { meanOfElements } from '../../phenomena/metal-flow/section-means.ts';
import type { FlowSection, FlowSolution, FlowStep } from '../../phenomena/metal-flow/solution.ts';
import { most, sideOf } from './over-section.ts';
import type { SliceRecord } from './record.ts';

/** Every section of the bite with the rates and the contact of the slice that ends in it. */
export function sliceRecords(problem: FlowProblem, solution: FlowSolution): SliceRecord[] {
  return solution.sections.map((section, i) => ({
    distance: section.distance,
    ...sideOf(solution, section),
    pull: section.pull,
    ...(i > 0 ? stepRecord(problem, solution, solution.steps[i - 1], section) : {}),
    ...(i > 0 ? speedsOf(solution, i) : {}),
  }));
}

/** Sections warp: parts run ahead of the mean speed of the slice, and others lag behind it. */
function speedsOf({ sections, steps }: FlowSolution, i: number) {
  const mean = (sections[i - 1].speed + sections[i].speed) / 2;
  const excess = Array.from(steps[i - 1].excess);
  return { slowest: mean + Math.min(...excess), fastest: mean + Math.max(...excess) };
}

function stepRecord({ rolls }: FlowProblem, solution: FlowSolution, step: FlowStep, { xy }: FlowSection) {
  const { contact } = step;
  return {
    strainRate: meanOfElements(solution, xy, step.rate),
    flowStress: meanOfElements(solution, xy, step.flowStress),
    shear: most(step.shearShare),
    contact: Array.from(contact.node, (node, c) => ({
      roll: rolls[contact.roll[c]].name,
      x: xy[2 * node],
      y: xy[2 * node + 1],
      pressure: contact.pressure[c],
      slip: contact.slip[c],
    })),
  };
}
