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
  }));
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
