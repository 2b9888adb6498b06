import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import type { Loads } from '../loads.ts';

/**
 * Loads of the stand by metal flow. The pass is solved at the middle of the bar; at head and tail its loads are higher or
 * lower by as much as the handbook's, which know each place's temperature.
 *
 * there, middle   the handbook's loads at the place and at the middle.
 */
export function flowLoads({ rolls }: FlowSolution, there: Loads, middle: Loads): Loads {
  const of = (name: string) => rolls.find((each) => each.name === name);
  const [top, foot, head] = [of('top'), of('foot roll'), of('head roll')];
  const ratio = (load: (loads: Loads) => number) => (load(middle) > 0 ? load(there) / load(middle) : 1);
  const driven = ratio(({ torque }) => torque);
  return {
    elements: there.elements,
    force: (top?.force ?? 0) * ratio(({ force }) => force),
    footForce: (foot?.force ?? 0) * ratio(({ footForce }) => footForce),
    headForce: (head?.force ?? 0) * ratio(({ headForce }) => headForce),
    torque: (top?.torque ?? 0) * driven,
    power: 2 * (top?.power ?? 0) * driven,
  };
}
