import { type Bar, placeNames } from '../../bar/bar.ts';
import { balanceOf, meanEnthalpy } from '../../bar/heat-content.ts';
import { snapshotOf } from '../../bar/snapshot.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { waterDensity } from '../../phenomena/jets/jet.ts';
import { sectionProperties } from '../../section/properties.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { metalLoss, scaleDensity, scaleLaw } from '../../steel/oxidation.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import { type Passage, passages } from './cooling.ts';
import type { DescalerEquipment } from './equipment.ts';
import { findingsOf, measuresOf } from './findings.ts';
import { type Jets, jetsOn } from './jets.ts';
import type { DescalerRecord } from './record.ts';
import type { DescalerSettings } from './settings.ts';

interface Three {
  readonly head: Passage;
  readonly middle: Passage;
  readonly tail: Passage;
}

/**
 * From the furnace door through the jets to the end of the run-out. The head comes first, middle and tail later by length
 * over speed; until then they radiate. Furnace scale goes as far as jets and impact reach; the little that grows on the
 * way takes its iron from the bar's mass. The outline keeps its hot size.
 */
export function descaler(
  bar: Bar,
  settings: DescalerSettings,
  equipment: DescalerEquipment,
): Result<{ readonly bar: Bar; readonly record: DescalerRecord }> {
  const law = heatingLaw(bar.grade);
  const jets = jetsOn(bar, settings, equipment);
  const pass = passages(bar, law, jets, settings, equipment);
  const head = pass(bar.head, 0);
  if (!head.ok) return head;
  const middle = pass(bar.middle, bar.length / 2);
  if (!middle.ok) return middle;
  const tail = pass(bar.tail, bar.length);
  if (!tail.ok) return tail;
  const three = { head: head.value, middle: middle.value, tail: tail.value };

  const scale = scaleOf(bar, three.middle, jets, equipment);
  const leaving: Bar = {
    ...bar,
    head: three.head.place,
    middle: three.middle.place,
    tail: three.tail.place,
    mass: bar.mass - scale.metalLost,
    scale: scale.left,
  };
  const numbers = numbersOf(bar, three, jets, scale, settings);
  const measures = measuresOf(numbers, equipment);
  const record: DescalerRecord = {
    kind: 'descaler',
    leaving: snapshotOf(leaving),
    balance: ledger(bar, leaving, three, law),
    measures,
    findings: findingsOf(numbers, measures, settings, equipment),
    ...numbers,
  };
  return ok({ bar: leaving, record });
}

interface Scale {
  /** m before the jets and after them, mean over the skin. */
  readonly before: number;
  readonly left: number;
  /** kg of scale that came off, and kg of steel that became scale on the way. */
  readonly removed: number;
  readonly metalLost: number;
}

function scaleOf(bar: Bar, { told }: Passage, jets: Jets, { removal, limits }: DescalerEquipment): Scale {
  const from = bar.scale ?? 0;
  const before = scaleLaw().grown(from, told.surfaceBefore, told.arrives - bar.middle.clock);
  const perimeter = jets.faces.reduce((sum, { width }) => sum + width, 0);
  const covered = jets.faces.reduce((sum, face) => sum + face.covered * face.width, 0) / perimeter;
  const off = covered * removal * Math.min(1, jets.impact / limits.impact);
  const skin = sectionProperties(bar.outline).perimeter * bar.length;
  return {
    before,
    left: before * (1 - off),
    removed: before * off * skin * scaleDensity,
    metalLost: metalLoss(before - from) * skin,
  };
}

function numbersOf(bar: Bar, three: Three, jets: Jets, scale: Scale, { speed }: DescalerSettings) {
  const { head, middle, tail } = three;
  return {
    jetForce: jets.force,
    impact: jets.impact,
    sprayWidth: jets.width,
    sprayDepth: jets.depth,
    underJet: jets.underJet,
    faces: [...jets.faces],
    places: { head: head.told, middle: middle.told, tail: tail.told },
    curves: middle.curves,
    scaleBefore: scale.before,
    scaleRemoved: scale.removed,
    waterFlow: jets.flow,
    water: (jets.flow * waterDensity * bar.length) / speed,
  };
}

/** Each place stands for a third of the bar. */
function ledger(bar: Bar, leaving: Bar, three: Three, law: ThermalLaw) {
  const gained: Record<string, number> = {};
  let warmth = 0;
  for (const name of placeNames) {
    for (const [channel, heat] of Object.entries(three[name].gained)) {
      gained[channel] = (gained[channel] ?? 0) + (heat * bar.length) / placeNames.length;
    }
    warmth += meanEnthalpy(bar.mesh, three[name].place.temperature, law) / placeNames.length;
  }
  const lost = bar.mass - leaving.mass;
  return balanceOf(bar, leaving, { scale: lost }, { ...gained, leftWithMass: -lost * warmth }, law);
}
