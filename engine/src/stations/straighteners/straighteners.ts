import type { Bar, Place } from '../../bar/bar.ts';
import { balanceOf, meanEnthalpy } from '../../bar/heat-content.ts';
import { snapshotOf } from '../../bar/snapshot.ts';
import type { Field } from '../../outcome/field.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { rise } from '../../phenomena/bending/closed-forms.ts';
import { type ColdSection, coldSection, type Plane, stressOf } from '../../phenomena/bending/cold-section.ts';
import { fibresOfMesh } from '../../phenomena/bending/fibres.ts';
import { overlayOf } from '../../phenomena/bending/overlay.ts';
import { railNodes } from '../../phenomena/bending/rail-nodes.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { yieldCurve } from '../../steel/yield-curve.ts';
import type { StraightenersEquipment } from './equipment.ts';
import { type Range, type StraightFacts, worst } from './facts.ts';
import { findingsOf } from './findings.ts';
import {
  carriedBySide,
  type Machine,
  machineRecord,
  machinesOf,
  type OverSpread,
  overSpread,
  type Passed,
} from './machine.ts';
import { measuresOf } from './measures.ts';
import type { StraightenersRecord } from './record.ts';
import type { StraightenersSettings } from './settings.ts';

/**
 * Bends the bar through the height-plane machine and then the side-plane machine, every fibre with its memory from the
 * bed on, and says what leaves over the spread of what comes in. The bar comes upright from the bed; without its cold
 * state there is no answer. Ends shorter than two pitches stay as they came; roller contact is not in the model, so the
 * stress that leaves is the bending part only.
 */
export function straighteners(
  bar: Bar,
  settings: StraightenersSettings,
  equipment: StraightenersEquipment,
): Result<{ bar: Bar; record: StraightenersRecord }> {
  const section = sectionOf(bar);
  if (!section.ok) return section;
  const machines = machinesOf(settings, equipment);
  const spread = overSpread(section.value, machines, settings);
  if (!spread.ok) return spread;
  const { nominal, all } = spread.value;
  const { height, side } = bothMachines(section.value, machines, spread.value, settings.speed);
  const work = height.work + side.work;
  const leaving = leavingBar(bar, nominal.side.section, work, settings.speed);
  const facts = factsOf(leaving, all, nominal, carriedBySide(section.value, machines, nominal));
  const both = { height: height.record, side: side.record };
  const record: StraightenersRecord = {
    kind: 'straighteners',
    leaving: snapshotOf(leaving),
    balance: balanceOf(bar, leaving, {}, { deformation: work * bar.length }),
    measures: measuresOf(both, facts, settings, equipment),
    findings: findingsOf(both, facts, leaving, settings, equipment),
    ...both,
    ...facts.record,
  };
  return ok({ bar: leaving, record });
}

/** The records of both machines; the bar enters the side machine as the height machine leaves it. */
function bothMachines(
  section: ColdSection,
  machines: Record<Plane, Machine>,
  { nominal, all }: OverSpread,
  speed: number,
) {
  const of = (plane: Plane, entering: ColdSection) =>
    machineRecord(
      entering,
      machines[plane],
      nominal[plane],
      all.map((each) => each[plane]),
      speed,
    );
  return { height: of('height', section), side: of('side', nominal.height.section) };
}

/** The cold section of the bar with the stress and camber of the bed. */
export function sectionOf(bar: Bar): Result<ColdSection> {
  if (!bar.cold) {
    return fail({
      model: 'straighteners',
      reason: 'The bar has not cooled on the bed: its stress and camber are unknown.',
    });
  }
  const law = overlayOf(yieldCurve(bar.grade));
  const { stress, heightCurvature, sideCurvature } = bar.cold;
  return ok(coldSection(fibresOfMesh(bar.mesh), law, stress, [heightCurvature, sideCurvature]));
}

function factsOf(leaving: Bar, all: readonly Passed[], nominal: Passed, carried: number): StraightFacts {
  const left = (which: 1 | 2): Range => {
    const row = all.map((each) => each.side.section.strain[which]);
    return { nominal: nominal.side.section.strain[which], low: Math.min(...row), high: Math.max(...row) };
  };
  const [heightRange, sideRange] = [left(1), left(2)];
  const nodes = railNodes(leaving.mesh);
  const stress = Array.from(leaving.cold?.stress ?? []);
  return {
    heightRange,
    sideRange,
    carried,
    record: {
      flatness3m: rise(worst(heightRange), 3),
      flatness1m: rise(worst(heightRange), 1),
      flatnessSide: rise(worst(sideRange), 1.5),
      heightCurvature: heightRange.nominal,
      heightLow: heightRange.low,
      heightHigh: heightRange.high,
      sideCurvature: sideRange.nominal,
      sideLow: sideRange.low,
      sideHigh: sideRange.high,
      nodeX: Array.from(leaving.mesh.xy).filter((_, i) => i % 2 === 0),
      nodeY: Array.from(leaving.mesh.xy).filter((_, i) => i % 2 === 1),
      triangles: Array.from(leaving.mesh.triangles),
      stress,
      footStress: stress[nodes.footUnderside],
      headStress: stress[nodes.crown],
    },
  };
}

/**
 * New stress and curvature; the work of bending, J/m, warms the bar evenly. It is through when its tail is: every place
 * is older by length over speed; what cools away meanwhile at hand warmth is left out.
 */
function leavingBar(bar: Bar, section: ColdSection, work: number, speed: number): Bar {
  const heat = (work * bar.length) / bar.mass;
  const warmed = (place: Place): Place => ({
    clock: place.clock + bar.length / speed,
    temperature: warmer(bar, place.temperature, heat),
  });
  return {
    ...bar,
    head: warmed(bar.head),
    middle: warmed(bar.middle),
    tail: warmed(bar.tail),
    cold: {
      heightCurvature: section.strain[1],
      sideCurvature: section.strain[2],
      stress: stressOf(section),
      pearlite: bar.cold?.pearlite ?? [],
    },
  };
}

/** The temperatures with `heat` more, J/kg, by one rise everywhere. */
function warmer({ grade, mesh }: Bar, temperature: Field, heat: number): Float64Array {
  const law = heatingLaw(grade);
  const raised = (more: number) => Float64Array.from(temperature, (T) => T + more);
  const content = (more: number) => meanEnthalpy(mesh, raised(more), law);
  const wanted = content(0) + heat;
  let more = 0;
  for (let step = 0; step < 20 && Math.abs(wanted - content(more)) > 1e-12 * Math.abs(wanted); step++) {
    more += (wanted - content(more)) / (content(more + 0.5) - content(more - 0.5));
  }
  return raised(more);
}
