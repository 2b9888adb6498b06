import type { Bite, Level } from './bite.ts';
import type { Balanced } from './entry-speed.ts';
import type { March } from './marched.ts';
import { copies } from './quad-mesh.ts';
import type { EnergyBalance } from './solution.ts';
import { forcesAt, type SliceForces } from './touching.ts';

/**
 * Power that rolls and pulls bring in against what deformation and slip take, all at the speeds of the balance. The two
 * sides come from different equations, the forces along the bar and the rates across it: they agree only in a pass that
 * has settled.
 */
export function energyOf(bite: Bite, level: Level, march: March, balanced: Balanced): EnergyBalance {
  const { problem } = bite;
  const forces: SliceForces = { along: 0, slipPower: 0, power: new Float64Array(problem.rolls.length) };
  let [rolls, plastic, friction] = [0, 0, 0];
  march.steps.forEach((step, i) => {
    const higher = (balanced.pull[i] - level.pull[i]) / march.sections[i].area;
    forcesAt(step.touching, balanced.ratio, balanced.turning, higher || 1e-9, forces);
    plastic += step.plastic * balanced.ratio;
    friction += step.length * forces.slipPower;
    for (const power of forces.power) rolls += step.length * power;
  });
  const flow = level.flow * balanced.ratio;
  const tension = flow * ((problem.tension?.exit ?? 0) - (problem.tension?.entry ?? 0));
  const supplied = rolls + tension;
  const whole = copies(problem.mesh.symmetry);
  return {
    rolls: whole * rolls,
    tension: whole * tension,
    plastic: whole * plastic,
    friction: whole * friction,
    error: supplied > 0 ? (supplied - plastic - friction) / supplied : 1,
  };
}
