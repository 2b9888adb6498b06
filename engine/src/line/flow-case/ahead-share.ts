import type { FlowSolution } from '../../phenomena/metal-flow/solution.ts';

/**
 * Share of a roll's pressure under which the bar runs ahead of the roll, so that friction holds it back: what is left
 * to draw more than the pass needs. 0: the roll only drives; 1: it only holds back. Nothing where it does not touch.
 */
export function aheadShare(r: number, { steps }: FlowSolution): number | undefined {
  let [ahead, all] = [0, 0];
  for (const { length, contact } of steps) {
    for (let c = 0; c < contact.node.length; c++) {
      if (contact.roll[c] !== r) continue;
      const force = length * Math.max(0, contact.force[c]);
      all += force;
      if (contact.slip[c] > 0) ahead += force;
    }
  }
  return all > 0 ? ahead / all : undefined;
}
