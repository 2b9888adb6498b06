import type { WholeMesh } from '../../../phenomena/metal-flow/meshing/whole.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import { contactHeat } from '../../../phenomena/roll-contact/roll-contact.ts';

/** For how long each node of the computed part touches rolls, s: the steps in which it does, each as long as it lasts. */
export function contactTimes({ mesh, sections, steps }: FlowSolution): Float64Array {
  const times = new Float64Array(mesh.xy.length / 2);
  steps.forEach(({ contact, length }, i) => {
    const duration = (2 * length) / (sections[i].speed + sections[i + 1].speed);
    // A node may meet two faces of a roll, but time passes once.
    for (const node of new Set(contact.node)) times[node] += duration;
  });
  return times;
}

/**
 * How much of the heat of a contact as long as the longest each edge of the skin gives up, times `growth`: how much
 * larger the skin is on its mean way through the bite.
 */
export function touchedShares(
  { boundary, part }: WholeMesh,
  times: Float64Array,
  conductance: number,
  growth: number,
): { readonly touched: Float64Array; readonly duration: number } {
  const duration = times.reduce((longest, each) => Math.max(longest, each), 0);
  const most = contactHeat(conductance, duration);
  const share = (node: number) => (most > 0 ? contactHeat(conductance, times[part[node]]) / most : 0);
  const touched = Float64Array.from(
    { length: boundary.length / 2 },
    (_, e) => (growth * (share(boundary[2 * e]) + share(boundary[2 * e + 1]))) / 2,
  );
  return { touched, duration };
}
