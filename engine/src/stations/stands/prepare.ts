import type { Bar } from '../../bar/bar.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import type { Path } from '../../section/outline.ts';
import type { FlowStressLaw } from '../../steel/flow-stress.ts';
import { misaka } from '../../steel/misaka.ts';
import { shida } from '../../steel/shida.ts';
import { clearsWeb, rolledOnEdge } from './edging-section.ts';
import type { Stand } from './equipment.ts';
import { type Rolled, rolledBetween } from './exit-section.ts';
import { type Cavity, cavityOf } from './groove/cavity.ts';
import type { Groove } from './groove/groove.ts';
import { rollsOf, type SetRolls } from './groove/rolls.ts';
import { upperHalf } from './half-section/half-section.ts';
import { leftOf, rightOf } from './half-section/measure.ts';
import { heightAt, piecesOf } from './half-section/pieces.ts';
import { isForceLaw } from './loads.ts';
import { type Placed, placed } from './placing.ts';
import { type SpreadRule, spreadLawNamed } from './section-law.ts';
import type { PassSettings } from './settings.ts';
import { rolledUniversal } from './universal-section.ts';

/** Everything about a pass that does not depend on time or temperature. */
export interface Prepared {
  readonly groove: Groove;
  readonly rolls: SetRolls;
  readonly cavity: Cavity;
  readonly entry: Placed;
  readonly rolled: Rolled;
  /** y of the top roll's axis, m. */
  readonly axis: number;
  readonly verticalRadius: number;
  /** Radius at which the set speed holds: over the middle of the groove, m. */
  readonly workingRadius: number;
  readonly flowStress: FlowStressLaw;
}

const flowStressLaws: Readonly<Record<string, (carbon: number) => FlowStressLaw>> = {
  Shida: shida,
  Misaka: misaka,
};

export function prepared(bar: Bar, settings: PassSettings, stand: Stand): Result<Prepared> {
  const groove = stand.grooves.find(({ name }) => name === settings.groove);
  if (!groove) return unknown(`groove ${settings.groove} is not cut in the rolls of stand ${stand.code}`);
  const { model } = stand;
  const law = spreadLawNamed(model.spreadLaw);
  if (!law) return unknown(`spread law ${model.spreadLaw} is not known`);
  if (!isForceLaw(model.forceLaw)) return unknown(`force law ${model.forceLaw} is not known`);
  const flowStress = flowStressLaws[model.flowStressLaw]?.(bar.grade.composition.C);
  if (!flowStress) return unknown(`flow stress law ${model.flowStressLaw} is not known`);
  const vertical = stand.verticalDiameter ?? 0.75;
  const rolls = rollsOf(groove, settings, { horizontal: stand.rollDiameter, vertical });
  if (!rolls.ok) return rolls;
  const entry = placed(bar, settings);
  const half = upperHalf(entry.outline);
  if (!half.ok) return half;
  const cavity = cavityOf(groove, rolls.value);
  if (cavity.half.vertices.length < 2) {
    return unknown(
      `the rolls of groove ${groove.name} leave no room between them: move the vertical rolls apart`,
    );
  }
  const isApart = rightOf(half.value) <= leftOf(cavity.half) || leftOf(half.value) >= rightOf(cavity.half);
  if (isApart) return unknown(`the bar lies beside groove ${groove.name}: check where it is led`);
  const spans = spansWeb(half.value, cavity);
  if (rolls.value.footFace !== undefined && !spans) {
    return unknown(`the bar does not reach from foot to head of groove ${groove.name}`);
  }
  const axis = rolls.value.rolls[0].axis;
  const rule: SpreadRule = {
    law,
    friction: stand.friction,
    bar: model.spread * (groove.spread ?? 1),
    foot: model.footSpread,
    head: model.headSpread,
  };
  return ok({
    groove,
    rolls: rolls.value,
    cavity,
    entry,
    rolled: rolledThrough(half.value, cavity, rolls.value, rule, axis, vertical / 2),
    axis,
    verticalRadius: vertical / 2,
    workingRadius: axis - heightAt(piecesOf(cavity.half), middleOf(cavity)),
    flowStress,
  });
}

function rolledThrough(
  half: Path,
  cavity: Cavity,
  { footFace, headFace, rail }: SetRolls,
  rule: SpreadRule,
  axis: number,
  vertical: number,
): Rolled {
  const radius = (height: number) => Math.max(axis - height / 2, axis / 4);
  if (footFace !== undefined && headFace !== undefined) {
    const rolls = { footFace, headFace, radius: vertical, ...(rail ? { rail } : {}) };
    return rolledUniversal(half, cavity, rule, rolls);
  }
  return spansWeb(half, cavity) && clearsWeb(half, cavity)
    ? rolledOnEdge(half, cavity, rule, radius)
    : rolledBetween(half, cavity, rule, radius);
}

/** Whether the bar has a foot, a web and a head as the groove parts them. */
const spansWeb = (half: Path, { webFootEnd, webHeadEnd }: Cavity): boolean =>
  webFootEnd !== undefined &&
  webHeadEnd !== undefined &&
  leftOf(half) < webFootEnd - 1e-3 &&
  rightOf(half) > webHeadEnd + 1e-3;

const middleOf = ({ from, to, webFootEnd = from, webHeadEnd = to }: Cavity): number =>
  (webFootEnd + webHeadEnd) / 2;

const unknown = (reason: string) => fail({ model: 'pass', reason });
