import type { Field } from '../../outcome/field.ts';
import { outlineOf } from '../../phenomena/metal-flow/meshing/whole.ts';
import { meanOfElements, meanOfNodes } from '../../phenomena/metal-flow/section-means.ts';
import type { FlowSection, FlowSolution } from '../../phenomena/metal-flow/solution.ts';
import { edgesOf } from '../../section/edges.ts';
import { boundsOf } from '../../section/properties.ts';

/** Outline and measures of the whole section at one place of the bite. */
export function sideOf(solution: FlowSolution, section: FlowSection) {
  const outline = outlineOf(solution.mesh, section.xy);
  const { left, right, top, bottom } = boundsOf(edgesOf(outline));
  return {
    outline,
    area: section.area,
    width: right - left,
    height: top - bottom,
    speed: section.speed,
    temperature: meanOfNodes(solution, section.xy, section.temperature),
  };
}

/** Mean strain rate of the slices in which a roll touches, each by its length, 1/s. */
export function biteRate(solution: FlowSolution): number {
  let [sum, length] = [0, 0];
  solution.steps.forEach((step, i) => {
    if (step.contact.node.length === 0) return;
    sum += step.length * meanOfElements(solution, solution.sections[i].xy, step.rate);
    length += step.length;
  });
  return length > 0 ? sum / length : 0;
}

export function most(field: Field): number {
  let largest = field[0];
  for (const value of field) if (value > largest) largest = value;
  return largest;
}

export function least(field: Field): number {
  let smallest = field[0];
  for (const value of field) if (value < smallest) smallest = value;
  return smallest;
}
