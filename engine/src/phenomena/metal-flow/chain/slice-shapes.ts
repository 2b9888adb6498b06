import { solve } from '../../../numerics/ldlt.ts';
import type { Field } from '../../../outcome/field.ts';
import type { SliceRoom } from '../slice.ts';
import type { SliceTask } from '../slice-problem.ts';
import { elementSlope, type Viscous } from '../viscous.ts';
import { meanOver } from '../warping.ts';

/**
 * Shapes in which the velocities of a solved slice follow its neighbours, one after the other: what the slice answers to
 * an even rate along the bar, to the rate of every mode, and to a further step of its own last change (from `was`).
 */
export function sliceShapes(
  task: SliceTask,
  modes: readonly Field[],
  along: number,
  velocity: Field,
  was: Field,
  { factored, element }: SliceRoom,
): Float64Array {
  const { flow, coupling } = task;
  const [n, count] = [velocity.length, modes.length + 2];
  const out = new Float64Array(count * n);
  if (!factored) return out;
  pushOfRates(flow, modes, along, velocity, element, out);
  const last = (count - 1) * n;
  for (let i = 0; i < n; i++) out[last + i] = coupling[i >> 1] * (velocity[i] - was[i]);
  for (const i of flow.grid.held) for (let at = i; at < out.length; at += n) out[at] = 0;
  return solve(factored, out, out);
}

/** ∂²Π/∂v∂e of the even rate and of every mode's, one after the other. */
function pushOfRates(
  flow: Viscous,
  modes: readonly Field[],
  along: number,
  velocity: Field,
  room: SliceRoom['element'],
  out: Float64Array,
): void {
  const { grid, geometry, stretch, bulk } = flow;
  const { quads } = grid;
  for (let k = 0; k < grid.elements; k++) {
    elementSlope(flow, velocity, k, room);
    const axial = geometry.area[k] * room.second * (4 / 3) * (along + stretch[k]);
    for (let l = 0; l <= modes.length; l++) {
      const weight = l === 0 ? 1 : meanOver(quads, modes[l - 1], k);
      for (let i = 0; i < 8; i++) {
        const at = l * velocity.length + 2 * quads[4 * k + (i >> 1)] + (i & 1);
        out[at] += weight * (axial * room.slope[i] + bulk * geometry.divergence[8 * k + i]);
      }
    }
  }
}
