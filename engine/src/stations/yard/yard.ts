import type { Bar } from '../../bar/bar.ts';
import { balanceOf, heatContent } from '../../bar/heat-content.ts';
import type { Measure } from '../../bar/measure.ts';
import { withPieces } from '../../bar/shorten.ts';
import { snapshotOf } from '../../bar/snapshot.ts';
import { sum } from '../../numerics/sum.ts';
import type { Finding } from '../../outcome/finding.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { print } from '../../units/unit.ts';
import { bundlesOf } from './bundles.ts';
import { cutOrder, type Pattern, type Wanted } from './cut-pattern.ts';
import type { YardEquipment } from './equipment.ts';
import type { YardRecord } from './record.ts';
import type { YardSettings } from './settings.ts';

/** What the yard has to fill: the rails of the order, and what one bloom weighed when it was charged. */
export interface YardTask extends YardSettings {
  readonly rails: readonly Wanted[];
  /** kg */
  readonly bloomMass: number;
}

/**
 * Cuts straight, cold bars to the order's rails, bundles and loads them. The bar that leaves is cut by the first
 * pattern of the plan; the record holds the plan for the whole order.
 */
export function yard(
  bar: Bar,
  task: YardTask,
  equipment: YardEquipment,
): Result<{ bar: Bar; record: YardRecord }> {
  const massPerMetre = bar.mass / bar.length;
  const usable = bar.pieces.map((piece) => Math.max(piece - 2 * task.endCrop - sampleOf(task, equipment), 0));
  const usableLength = Math.max(0, ...usable);
  const patterns = cutOrder(task.rails, usableLength, equipment.kerf);
  const leaving = withPieces(bar, cutFirst(patterns, bar));
  const bundles = bundlesOf(task, equipment, massPerMetre);
  const bars = patterns.reduce((total, pattern) => total + pattern.bars, 0);
  const ordered = massPerMetre * sum(task.rails.map(({ length, count }) => length * count));
  const cut = massPerMetre * sum(patterns.map(({ rails, bars: times }) => sum(rails) * times));
  const share = bars > 0 ? cut / (bars * task.bloomMass) : 0;
  const record: YardRecord = {
    kind: 'yard',
    leaving: snapshotOf(leaving),
    balance: balance(bar, leaving, task, equipment),
    measures: measuresOf(bundles, equipment, share),
    findings: findingsOf(task, usableLength),
    massPerMetre,
    usableLength,
    patterns: patterns.map(({ rails, bars: times }) => ({
      rails,
      bars: times,
      remnant: usableLength - sum(rails) - (rails.length - 1) * equipment.kerf,
    })),
    bundles,
    bars,
    ordered,
    yield: share,
  };
  return ok({ bar: leaving, record });
}

const sampleOf = ({ sampleLength }: YardTask, { kerf }: YardEquipment): number =>
  2 * kerf + (sampleLength > 0 ? sampleLength + kerf : 0);

/** Rails of the first pattern, or nothing where no rail of the order fits this bar. */
const cutFirst = (patterns: readonly Pattern[], bar: Bar): readonly number[] =>
  bar.length > 0 && patterns.length > 0 ? patterns[0].rails : [];

function balance(bar: Bar, leaving: Bar, task: YardTask, equipment: YardEquipment) {
  const perMetre = bar.mass / bar.length;
  const lost = bar.mass - leaving.mass;
  const crop = Math.min(2 * task.endCrop * perMetre, lost);
  const sample = Math.min(task.sampleLength * perMetre, lost - crop);
  const cuts = leaving.pieces.length + 1 + (task.sampleLength > 0 ? 1 : 0);
  const kerf = Math.min(cuts * equipment.kerf * perMetre, lost - crop - sample);
  const named = { crop, sample, kerf, remnant: lost - crop - sample - kerf };
  return balanceOf(bar, leaving, named, { leftWithMass: heatContent(leaving) - heatContent(bar) });
}

function measuresOf(bundles: YardRecord['bundles'], equipment: YardEquipment, share: number): Measure[] {
  const heaviest = Math.max(0, ...bundles.map(({ bundleMass }) => bundleMass));
  const limit = Math.min(equipment.bundleLimit, equipment.craneLimit);
  const common = { law: 'weighed by the computed section', sure: 'computed' } as const;
  return [
    { name: 'bundle mass', part: 'heaviest', unit: 't', value: heaviest, limit, limitIs: 'most', ...common },
    { name: 'yield', part: 'bloom to delivered rail', unit: 'percent', value: share, ...common },
  ];
}

function findingsOf(task: YardTask, usable: number): Finding[] {
  return task.rails
    .filter(({ length, count }) => count > 0 && length > usable)
    .map(({ length }) => ({
      level: 'outside',
      check: 'rail-longer-than-bar',
      text: `Rails of ${print(length, 'm', 2)} do not fit the straight bar of ${print(usable, 'm', 2)}.`,
      advice: `Make the bar ${print(length - usable, 'm', 2)} longer at the hot saw, with a bloom to match.`,
      value: usable,
      limit: length,
      unit: 'm',
      stop: true,
      setting: 'settings.saws.coldLengthsM',
    }));
}
