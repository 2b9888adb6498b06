import { fail, ok, type Result } from '../../outcome/result.ts';
import type { Bite } from './bite.ts';
import type { March } from './march.ts';
import { copies } from './quad-mesh.ts';
import type { Solved } from './roll-pass.ts';
import { isHorizontal } from './roll-surface.ts';
import type { FlowSection, FlowSolution, FlowStep, RollLoads } from './solution.ts';
import { forcesAt, type SliceForces } from './touching.ts';

export function solutionOf(bite: Bite, made: Solved): Result<FlowSolution> {
  const { last, settled } = made.outcome;
  if (!last) return fail({ model: 'metal flow', reason: 'nothing came out' });
  const { march, balanced } = last;
  void settled;
  const whole = copies(bite.problem.mesh.symmetry);
  const flow = made.level.flow * balanced.ratio;
  const sections: FlowSection[] = march.sections.map(({ xy, area, temperature }, i) => ({
    distance: made.level.distance[i],
    xy,
    area: whole * area,
    speed: flow / area,
    pull: whole * balanced.pull[i],
    temperature,
  }));
  const first = sections[0];
  const exit = sections[sections.length - 1];
  const loads = loadsOf(bite, made, march);
  return ok({
    mesh: bite.problem.mesh,
    sections,
    steps: march.steps.map(stepOf),
    rolls: loads,
    elongation: first.area / exit.area,
    forwardSlip: 0,
    entrySpeed: first.speed,
    exitSpeed: exit.speed,
    temperature: exit.temperature,
    strain: march.sections[march.sections.length - 1].strain,
    heat: new Float64Array(bite.grid.nodes),
    bending: { momentX: 0, momentY: 0 },
    energy: last.energy,
    quality: {
      nodes: bite.grid.nodes,
      slices: march.steps.length,
      marches: made.marches,
      rejected: made.rejected,
      restarts: made.restarts,
      flowChange: last.flowChange,
      pullChange: last.pullChange,
      areaChange: last.areaChange,
      volumeDrift: driftOf(march),
      largestShear: march.steps.reduce(
        (most, { shearShare }) => shearShare.reduce((m, s) => Math.max(m, s), most),
        0,
      ),
    },
  });
}

/** ∫ e dt against the logarithm of the areas. */
function driftOf({ sections, steps }: March): number {
  const stretched = steps.reduce((sum, { along, duration }) => sum + along * duration, 0);
  const elongated = Math.log(sections[0].area / sections[sections.length - 1].area);
  return elongated === 0 ? 0 : stretched / elongated - 1;
}

function stepOf(step: March['steps'][number]): FlowStep {
  const { length, rate, flowStress, shearShare, velocity, touching } = step;
  return {
    length,
    rate,
    flowStress,
    shearShare,
    velocity,
    contact: {
      node: touching.node,
      roll: touching.roll,
      force: touching.pressure,
      pressure: touching.pressure.map((force, c) => force / touching.share[c]),
      friction: touching.friction,
      slip: touching.along.map((radius) => step.speed - radius),
    },
  };
}

function loadsOf(bite: Bite, { level, outcome }: Solved, march: March): RollLoads[] {
  const { rolls, problem } = bite;
  const { symmetry } = problem.mesh;
  const balanced = outcome.last?.balanced;
  const turning = balanced?.turning ?? level.turning;
  const powers = new Float64Array(rolls.length);
  const forces: SliceForces = { along: 0, slipPower: 0, power: new Float64Array(rolls.length) };
  march.steps.forEach((step, i) => {
    const higher = ((balanced?.pull[i] ?? 0) - level.pull[i]) / march.sections[i].area;
    forcesAt(step.touching, balanced?.ratio ?? 1, turning, higher || 1e-9, forces);
    for (let r = 0; r < powers.length; r++) powers[r] += step.length * forces.power[r];
  });
  return rolls.map(({ roll, across, beyond }, r) => {
    const times = isHorizontal(roll.side)
      ? symmetry.x === undefined
        ? 1
        : 2
      : symmetry.y === undefined
        ? 1
        : 2;
    const force = [0, 0];
    let [area, longest, pressure, highest] = [0, 0, 0, 0];
    march.steps.forEach(({ touching, length, speed, velocity }) => {
      void velocity;
      let any = false;
      for (let c = 0; c < touching.count; c++) {
        if (touching.roll[c] !== r) continue;
        any = true;
        const rate = level.turning[r];
        const sx = touching.vx[c] - rate * touching.acrossX[c];
        const sy = touching.vy[c] - rate * touching.acrossY[c];
        const sz = speed - rate * touching.along[c];
        const per = touching.friction[c] / Math.sqrt(sx * sx + sy * sy + sz * sz + touching.fade ** 2);
        force[0] += length * (touching.pressure[c] * touching.nx[c] + per * sx);
        force[1] += length * (touching.pressure[c] * touching.ny[c] + per * sy);
        area += length * touching.share[c];
        pressure += length * touching.pressure[c];
        highest = Math.max(highest, touching.pressure[c] / touching.share[c]);
      }
      if (any) longest += length;
    });
    return {
      name: roll.name,
      force: beyond * times * force[across],
      lateral: symmetry.x !== undefined && across === 1 ? 0 : times * force[1 - across],
      torque: (times * powers[r]) / turning[r],
      power: times * powers[r],
      turning: turning[r],
      contactArea: times * area,
      contactLength: longest,
      meanPressure: area > 0 ? pressure / area : 0,
      highestPressure: highest,
    };
  });
}
