import { contactRatio } from './contact.ts';
import { ekelundForce } from './ekelund-force.ts';
import { type FactorLaw, type ForceLaw, fullForce, holds } from './force-law.ts';
import { fordAlexander } from './ford-alexander.ts';
import { frictionHill } from './friction-hill.ts';
import { orowanPascoe } from './orowan-pascoe.ts';
import type { FlatPass, HotPass } from './pass.ts';
import { siebelForce } from './siebel-force.ts';
import { sims } from './sims.ts';
import { slipLine } from './slip-line.ts';
import { thickStock } from './thick-stock.ts';
import { tselikov } from './tselikov.ts';

/** One law's answer beside the others. */
export interface LawValue {
  readonly name: string;
  readonly value: number;
  /** Inside its own validity here: only such values make the range. */
  readonly holds: boolean;
}

/** All laws side by side, and what they leave open. `chosen` names the law whose value is used. */
export interface LawRange {
  readonly chosen: string;
  readonly value: number;
  readonly laws: readonly LawValue[];
  readonly low: number;
  readonly high: number;
}

/**
 * Roll force, N, by every law of this room. Used is the larger of Sims and the slip-line factor: the friction of thin
 * stock, the hard core of thick. Ekelund stands beside and out of the range: he brings his own resistance of the steel,
 * which is a third too high for rails. The doubt in the flow stress itself comes on top.
 */
export function forceRange(pass: HotPass): LawRange {
  const chosen = chosenLaw(pass);
  const laws = [...factorLaws, ekelundForce].map((law) => ({
    name: law.name,
    value: law.force(pass),
    holds: law === chosen || (law !== ekelundForce && holds(law, pass)),
  }));
  return rangeOf(chosen.name, chosen.force(pass), laws);
}

/** Mean pressure over 2k of the law in use; continuous over the change from thick to thin stock. */
export const pressureFactor = (pass: FlatPass): number => Math.max(sims.factor(pass), slipLine.factor(pass));

/** Roll force, N, by the law in use: forceRange(pass).value without the others. */
export const rollForce = (pass: FlatPass): number => pressureFactor(pass) * fullForce(pass);

function chosenLaw(pass: FlatPass): FactorLaw {
  const thick = contactRatio(pass) < 1;
  return thick && slipLine.factor(pass) > sims.factor(pass) ? slipLine : sims;
}

const factorLaws: readonly FactorLaw[] = [
  sims,
  slipLine,
  fordAlexander,
  orowanPascoe,
  tselikov,
  frictionHill,
  siebelForce,
  thickStock,
];

/** Every force law of the room, for lists and documents. */
export const forceLaws: readonly ForceLaw[] = [...factorLaws, ekelundForce];

/** The range over the laws that hold. */
export function rangeOf(chosen: string, value: number, laws: readonly LawValue[]): LawRange {
  const held = laws.filter((law) => law.holds).map((law) => law.value);
  return { chosen, value, laws, low: Math.min(value, ...held), high: Math.max(value, ...held) };
}
