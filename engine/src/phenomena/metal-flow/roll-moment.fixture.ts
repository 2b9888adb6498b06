import type { FlowRoll } from './problem.ts';
import { copies } from './quad-mesh.ts';
import type { FlowSolution } from './solution.ts';

/**
 * Torque of a flat upper roll, N·m, by the moment of what presses and rubs on it about its axis: a second way beside
 * the power of friction, and the same only where pressures point at the axis. The power is that of the balanced pass; the
 * last march leaves some force along the bar over, for a hundredth of a percent of speed is much friction: its moment at the
 * roll's surface is taken off.
 */
export function momentOnRoll(solution: FlowSolution, roll: FlowRoll): number {
  let [moment, leftOver] = [0, 0];
  solution.steps.forEach((step, i) => {
    const middle = (solution.sections[i].distance + solution.sections[i + 1].distance) / 2;
    for (let c = 0; c < step.contact.node.length; c++) {
      const { along, up, y } = forceOn(solution, roll, i, c, middle);
      moment += step.length * (middle * up - (roll.axis - y) * along);
      leftOver += step.length * along;
    }
  });
  const exit = solution.sections[solution.sections.length - 1].xy;
  const surface = roll.axis - exitHeight(solution.mesh, exit);
  return (copies(solution.mesh.symmetry) / 2) * (moment + leftOver * surface);
}

/** Force of contact c of a step on the roll, N per metre of bar: along the bar and upwards; and the place's y, m. */
function forceOn(
  { sections, steps, mesh }: FlowSolution,
  roll: FlowRoll,
  i: number,
  c: number,
  middle: number,
) {
  const { contact, velocity, length } = steps[i];
  const at = 2 * contact.node[c];
  const turning = roll.turning === 'idle' ? 0 : roll.turning;
  const start = sections[i].xy[at + 1];
  const speed = contact.slip[c] + turning * (roll.axis - start);
  const [across, up] = [velocity[at], velocity[at + 1] + turning * middle];
  const fade = 0.01 * turning * (roll.axis - exitHeight(mesh, sections[sections.length - 1].xy));
  const size = Math.hypot(contact.slip[c], across, up, fade);
  const per = contact.friction[c] / size;
  const pressure = contact.force[c];
  return {
    along: per * contact.slip[c] - (pressure * velocity[at + 1]) / speed,
    up: pressure + per * up,
    y: start + (velocity[at + 1] * length) / speed / 2,
  };
}

function exitHeight({ loop }: FlowSolution['mesh'], xy: FlowSolution['sections'][number]['xy']): number {
  let height = 0;
  for (const node of loop) height = Math.max(height, xy[2 * node + 1]);
  return height;
}
