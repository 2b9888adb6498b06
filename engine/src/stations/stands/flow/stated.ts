import type { Field } from '../../../outcome/field.ts';
import { lawSteel } from '../../../phenomena/metal-flow/law-steel.ts';
import type { BiteHeat, FlowProblem } from '../../../phenomena/metal-flow/problem.ts';
import { meanOver } from '../../../section/mesh.ts';
import { withOwnFactor } from '../../../steel/flow-stress.ts';
import { en1993 } from '../../../steel/thermal-en1993.ts';
import type { Stand } from '../equipment.ts';
import type { Ahead } from './ahead.ts';
import { onPart, rememberedStrain } from './entering-mesh.ts';
import { flowRolls } from './flow-rolls.ts';
import { rollTurning, usualSlices } from './usual.ts';

/**
 * A pass as the metal-flow model takes it, at the middle of the bar.
 *
 * biting   °C at each node of the whole entering section.
 */
export function statedPass({ bar, settings, stand, prepared, entering }: Ahead, biting: Field): FlowProblem {
  const { groove, rolls, flowStress, entry } = prepared;
  const { entryTension: before = 0, exitTension: behind = 0 } = settings;
  return {
    mesh: entering.part,
    temperature: onPart(entering, biting),
    strain: rememberedStrain(prepared, entering, bar.strain, stand.model.retainedStrain ?? 0),
    steel: lawSteel(withOwnFactor(flowStress, stand.model.flowStress)),
    rolls: flowRolls(rolls.rolls, groove.family, rollTurning(settings, stand), stand.friction),
    ...(before || behind ? { tension: { entry: before, exit: behind } } : {}),
    heat: exchange(stand, entry.density, meanOver(entering.whole, biting)),
    wishes: { slices: settings.slices ?? usualSlices },
  };
}

const exchange = (stand: Stand, density: number, T: number): BiteHeat => ({
  heatCapacity: density * en1993.heatCapacity(T),
  conductivity: en1993.conductivity(T),
  contact: stand.contactCoefficient,
  rollTemperature: stand.rollTemperature,
});
