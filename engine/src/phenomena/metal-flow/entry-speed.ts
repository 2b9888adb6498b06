import { bracketedRoot } from '../../numerics/roots.ts';
import type { Field } from '../../outcome/field.ts';
import type { Level } from './bite.ts';
import type { March } from './marched.ts';
import type { FlowRoll } from './problem.ts';
import { forcesAt, type SliceForces } from './touching.ts';

/** What the slices' forces say the pass wants: how much faster the bar runs, how the idle rolls turn, the pull inside. */
export interface Balanced {
  /** New over old flow rate. */
  readonly ratio: number;
  readonly turning: Float64Array;
  /** N in the computed part at every section. */
  readonly pull: Float64Array;
  /** N left at the exit when the bar runs as it did. */
  readonly leftOver: number;
  /** No speed within reach balances the bar: the rolls skid, or the drive is not enough. */
  readonly skids: boolean;
}

/** Speeds searched, as shares of the present one. */
const slowest = 0.6;
const fastest = 1.6;

/** Speed and free turning bear on each other: found in turn so many times. */
const rounds = 5;

/**
 * The speed at which the forces along the bar end with the wanted pull at the exit, without solving a slice again:
 * contact as it is, pressures lowered by pull, friction as far as pressure carries it.
 */
export function balance(march: March, level: Level, rolls: readonly FlowRoll[], exitPull: number): Balanced {
  const pull = new Float64Array(level.pull.length);
  const turning = Float64Array.from(level.turning);
  const forces: SliceForces = { along: 0, slipPower: 0, power: new Float64Array(rolls.length) };
  const left = (ratio: number) => pullAlong(march, level, ratio, turning, forces, pull) - exitPull;
  const leftOver = left(1);
  let ratio = 1;
  let skids = false;
  const idle = rolls.flatMap(({ turning: drive }, r) => (drive === 'idle' ? [r] : []));
  for (let round = 0; round < (idle.length > 0 ? rounds : 1); round++) {
    for (const r of idle) turning[r] = freeTurning(march, level, ratio, turning, r, forces, pull);
    const root = bracketedRoot(left, slowest, fastest, { tolerance: 1e-5 });
    skids = !root.ok;
    ratio = root.ok ? root.value.root : left(slowest) > 0 ? slowest : fastest;
  }
  left(ratio);
  return { ratio, turning, pull, leftOver, skids };
}

/** Integrates the pull from the entry; returns it at the exit. */
function pullAlong(
  { steps, sections }: March,
  level: Level,
  ratio: number,
  turning: Field,
  forces: SliceForces,
  pull: Float64Array,
): number {
  pull[0] = level.pull[0];
  for (let i = 0; i < steps.length; i++) {
    const higher = (pull[i] - level.pull[i]) / sections[i].area;
    forcesAt(steps[i].touching, ratio, turning, higher, forces);
    pull[i + 1] = pull[i] - steps[i].length * forces.along;
  }
  return pull[steps.length];
}

/** rad/s at which an idle roll takes as much from the bar as it gives; as it turned where it does not touch. */
function freeTurning(
  { steps, sections }: March,
  level: Level,
  ratio: number,
  turning: Float64Array,
  r: number,
  forces: SliceForces,
  pull: Field,
): number {
  const was = turning[r];
  const power = (rate: number) => {
    turning[r] = rate;
    let sum = 0;
    for (let i = 0; i < steps.length; i++) {
      const higher = (pull[i] - level.pull[i]) / sections[i].area;
      forcesAt(steps[i].touching, ratio, turning, higher, forces);
      sum += (steps[i].length * forces.power[r]) / rate;
    }
    return sum;
  };
  const rolling = rollingSpeed(steps, r);
  const root = rolling
    ? bracketedRoot(power, 0.6 * ratio * rolling, 1.5 * ratio * rolling, { tolerance: 1e-5 * rolling })
    : undefined;
  turning[r] = was;
  return root?.ok ? root.value.root : was;
}

/** rad/s at which a roll would turn with the bar where it touches it, without slip on the whole; 0 without touch. */
function rollingSpeed(steps: March['steps'], r: number): number {
  let [sum, weight] = [0, 0];
  for (const { touching } of steps) {
    for (let c = 0; c < touching.count; c++) {
      if (touching.roll[c] !== r) continue;
      sum += (touching.share[c] * touching.speed[c]) / touching.along[c];
      weight += touching.share[c];
    }
  }
  return weight > 0 ? sum / weight : 0;
}
