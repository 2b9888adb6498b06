import type { FlowSolution } from './solution.ts';

/** Flow stress where and as fast as the bar deforms, Pa. */
export function meanStress({ steps }: FlowSolution): number {
  let [power, rates] = [0, 0];
  for (const { rate, flowStress, length } of steps) {
    for (let k = 0; k < rate.length; k++) {
      power += flowStress[k] * rate[k] * length;
      rates += rate[k] * length;
    }
  }
  return power / rates;
}
