import { type Law, outsideValidity } from '../../steel/law.ts';
import { constraint, contactLength, contactRatio, meanWidth } from './contact.ts';
import type { FlatPass, HotPass } from './pass.ts';

/** A handbook law for the roll force. */
export interface ForceLaw extends Law {
  /** N on the whole width. */
  readonly force: (pass: HotPass) => number;
}

/** A law for the mean roll pressure over 2k. */
export interface FactorLaw extends ForceLaw {
  readonly factor: (pass: FlatPass) => number;
}

/** The force law P = b_m · 2k · L · factor. */
export const fromFactor = (about: Law, factor: (pass: FlatPass) => number): FactorLaw => ({
  ...about,
  factor,
  force: (pass) => factor(pass) * fullForce(pass),
});

/** N, with the mean pressure at 2k: b_m · L · 2k, where 2k = 1.155 σ unless the bar is narrow. */
export const fullForce = (pass: FlatPass): number =>
  meanWidth(pass) * contactLength(pass) * constraint(pass) * pass.flowStress;

/** Whether the pass lies inside everything that the law sets bounds for. */
export const holds = (law: Law, pass: HotPass): boolean => outsideValidity(law, inputsOf(pass)).length === 0;

/** The inputs that the laws of this room set bounds for, by the names they use. */
export const inputsOf = (pass: HotPass): Readonly<Record<string, number>> => ({
  [ratioName]: contactRatio(pass),
  temperature: pass.temperature,
  manganese: pass.composition.Mn,
});

export const ratioName = 'ratio of contact length to mean height';
