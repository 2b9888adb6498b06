import type { Field } from '../../../outcome/field.ts';
import type { FlowProblem, FlowRoll, FlowSteel } from '../problem.ts';
import type { Symmetry } from '../quad-mesh.ts';
import type { RollLoads } from '../solution.ts';
import { leadSteel } from './lead-steel.ts';

/** °C. */
const roomTemperature = 20;

/**
 * The same pass on a block of lead at room temperature: all lengths times `scale` (0.1 for 1 : 10), rolls that turn as
 * fast. Turning as fast in rad/s gives the same strain rates at every scale; surface speeds matter for nothing else, as
 * inertia is small (below 3 m/s ρv² is less than a thousandth of the flow stress). Friction and entering strain are taken
 * over; heat is left out; pulls keep their share of the flow stress, compared where lead is known best.
 *
 * scale   above 0. What else must be equal, and is not, is told by similarityNotes.
 */
export function scaledDown(problem: FlowProblem, scale: number, steel: FlowSteel = leadSteel()): FlowProblem {
  const { heat: _, mesh, tension, ...rest } = problem;
  const ratio = stressRatio({ steel, temperature: roomTemperature }, hotSide(problem));
  return {
    ...rest,
    mesh: { ...mesh, xy: times(mesh.xy, scale), symmetry: scaledLines(mesh.symmetry, scale) },
    temperature: new Float64Array(problem.temperature.length).fill(roomTemperature),
    steel,
    rolls: problem.rolls.map((roll) => scaledRoll(roll, scale)),
    ...(tension && { tension: { entry: tension.entry * ratio, exit: tension.exit * ratio } }),
  };
}

const times = (values: Field, factor: number): Float64Array => Float64Array.from(values, (v) => v * factor);

const scaledRoll = (roll: FlowRoll, scale: number): FlowRoll => ({
  ...roll,
  axis: roll.axis * scale,
  profile: times(roll.profile, scale),
});

const scaledLines = ({ x, y }: Symmetry, scale: number): Symmetry => ({
  ...(x !== undefined && { x: x * scale }),
  ...(y !== undefined && { y: y * scale }),
});

/** A metal and the temperature, °C, at which it is rolled. */
export interface RolledMetal {
  readonly steel: FlowSteel;
  readonly temperature: number;
}

/** The metal of a problem at the mean of its nodes' temperatures. */
export const hotSide = ({ steel, temperature }: FlowProblem): RolledMetal => ({
  steel,
  temperature: meanOf(temperature),
});

const meanOf = (values: Field): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
};

/** Where two metals are compared: equivalent strain, and rate in 1/s. */
export interface CompareAt {
  readonly strain: number;
  readonly rate: number;
}

/** Lead is known best here. */
export const whereLeadIsKnown: CompareAt = { strain: 0.3, rate: 1 };

/** Flow stress of one metal, Pa. */
export const flowStressOf = ({ steel, temperature: T }: RolledMetal, { strain, rate }: CompareAt): number =>
  steel.strength(strain, T) * (rate / steel.referenceRate) ** steel.exponent(T);

/** Flow stress of the first metal over that of the second, at the same strain and rate. */
export const stressRatio = (of: RolledMetal, over: RolledMetal, at = whereLeadIsKnown): number =>
  flowStressOf(of, at) / flowStressOf(over, at);

/**
 * Loads read on a model block, as the hot bar would give them. Pressures go with the flow stress, forces with length²,
 * torques and powers with length³; rates, and with them times and rad/s, are taken to be the same.
 *
 * scale         length of the model over length of the bar: 0.1 for 1 : 10.
 * ratio         flow stress of the hot bar over that of the model (stressRatio), at the strains and rates of the pass.
 * turningRatio  rad/s of the hot mill over that of the model's; 1 unless the model is rolled slower. The flow stresses
 *               in `ratio` must then be taken each at its own rate.
 */
export function toHotBar(model: RollLoads, scale: number, ratio: number, turningRatio = 1): RollLoads {
  const { neutralLine, ...rest } = model;
  const [length, area, volume] = [1 / scale, scale ** -2, scale ** -3];
  return {
    ...rest,
    force: model.force * area * ratio,
    lateral: model.lateral * area * ratio,
    torque: model.torque * volume * ratio,
    power: model.power * volume * ratio * turningRatio,
    turning: model.turning * turningRatio,
    contactArea: model.contactArea * area,
    contactLength: model.contactLength * length,
    meanPressure: model.meanPressure * ratio,
    highestPressure: model.highestPressure * ratio,
    ...(neutralLine !== undefined && { neutralLine: neutralLine * length }),
  };
}
