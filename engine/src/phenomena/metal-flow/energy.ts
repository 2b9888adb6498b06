import type { Field } from '../../outcome/field.ts';
import type { Bite, Level } from './bite.ts';
import type { Balanced } from './entry-speed.ts';
import type { March } from './marched.ts';
import { copies } from './quad-mesh.ts';
import type { EnergyBalance } from './solution.ts';
import { forcesAt, type SliceForces } from './touching.ts';

/** W of each roll and W lost in slip, of the computed part, at the speeds of the balance; `marched`: the pull, N, of the march. */
export function powersAt({ steps, sections }: March, { ratio, turning, pull }: Balanced, marched: Field) {
  const forces: SliceForces = { along: 0, slipPower: 0, power: new Float64Array(turning.length) };
  const rolls = new Float64Array(turning.length);
  let slip = 0;
  steps.forEach(({ touching, length }, i) => {
    forcesAt(touching, ratio, turning, (pull[i] - marched[i]) / sections[i].area, forces);
    slip += length * forces.slipPower;
    for (let r = 0; r < rolls.length; r++) rolls[r] += length * forces.power[r];
  });
  return { rolls, slip };
}

/**
 * Power that rolls and pulls bring in against what deformation and slip take, all at the speeds of the balance. The two
 * sides come from different equations, the forces along the bar and the rates across it: they agree only in a pass that
 * has settled.
 */
export function energyOf(bite: Bite, level: Level, march: March, balanced: Balanced): EnergyBalance {
  const { problem } = bite;
  const { rolls: powers, slip: friction } = powersAt(march, balanced, level.pull);
  const rolls = powers.reduce((sum, power) => sum + power, 0);
  const plastic = march.steps.reduce((sum, step) => sum + step.plastic * balanced.ratio, 0);
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
