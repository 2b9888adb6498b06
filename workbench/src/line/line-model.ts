import { type Measure, shareOfLimit } from '@bloomrail/engine/bar/measure';
import type { StationRecord } from '@bloomrail/engine/bar/station';
import type { Finding } from '@bloomrail/engine/outcome/finding';
import type { Outline } from '@bloomrail/engine/section/outline';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import type { Station } from '../compute/progress.ts';
import { type Bounds, boundsOf } from '../ink/outline-path.ts';

/** One station of the line in figures: what the lanes, the strip and the table are drawn from. SI, °C. */
export interface Stop {
  readonly code: string;
  readonly title: string;
  readonly group: Station['group'];
  readonly state: Station['state'];
  /** A model had no answer here. */
  readonly failed: boolean;
  readonly bar?: BarHere;
  /** The end that goes first through a pass. */
  readonly first?: 'head' | 'tail';
  readonly loads: Loads;
  readonly findings: readonly Finding[];
}

export interface BarHere {
  readonly outline: Outline;
  readonly bounds: Bounds;
  readonly area: number;
  readonly length: number;
  readonly pieces: readonly number[];
  readonly mean: number;
  readonly surface: number;
  readonly core: number;
  readonly clock: number;
  /** Head, middle and tail: section means. */
  readonly along: readonly [number, number, number];
}

/** Shares of their limits, 1 at the limit; absent where the station has no such load. */
export interface Loads {
  readonly force?: number;
  readonly torque?: number;
  readonly power?: number;
  readonly largest?: number;
}

export const loadNames = ['force', 'torque', 'power'] as const;

export const stopsOfLine = (stations: readonly Station[], failedAt?: string): Stop[] =>
  stations.map(({ code, title, group, state, visit }) => ({
    code,
    title,
    group,
    state,
    failed: code === failedAt,
    loads: visit ? loadsOf(visit.record.measures) : {},
    findings: visit?.record.findings ?? [],
    ...(visit ? { bar: barHere(visit.record), ...firstEnd(visit.record) } : {}),
  }));

const firstEnd = (record: StationRecord) =>
  record.kind === 'pass' ? { first: (record as PassRecord).firstEnd } : {};

function barHere({ leaving }: StationRecord): BarHere {
  const { outline, area, length, pieces, places } = leaving;
  const { mean, surface, core, clock } = places.middle;
  const along = [places.head.mean, mean, places.tail.mean] as const;
  return { outline, bounds: boundsOf(outline), area, length, pieces, mean, surface, core, clock, along };
}

/** The largest share of each load over the parts of a station: the roll that is nearest to its limit. */
function loadsOf(measures: readonly Measure[]): Loads {
  const shares = loadNames.flatMap((name) => {
    const largest = largestShare(measures.filter((measure) => isLoad(measure, name)));
    return largest === undefined ? [] : [[name, largest] as const];
  });
  const largest = shares.length ? { largest: Math.max(...shares.map(([, share]) => share)) } : {};
  return { ...Object.fromEntries(shares), ...largest };
}

const isLoad = ({ name }: Measure, load: string): boolean =>
  name.toLowerCase().includes(load) && !/impact|jet|stress/.test(name);

function largestShare(measures: readonly Measure[]): number | undefined {
  const shares = measures.map(shareOfLimit).filter((share) => share !== undefined);
  return shares.length ? Math.max(...shares) : undefined;
}

const seriousness = { outside: 0, near: 1, note: 2 } as const;

/** By level; findings of one level keep the order in which the bar meets them. */
export const bySeriousness = (a: Finding, b: Finding): number => seriousness[a.level] - seriousness[b.level];

/** The most serious finding of a station and how many stand behind it. */
export function foremost(findings: readonly Finding[]): { finding: Finding; others: number } | undefined {
  const [finding] = [...findings].sort(bySeriousness);
  return finding && { finding, others: findings.length - 1 };
}

export function countsOf(stops: readonly Stop[]): Record<Finding['level'], number> {
  const counts = { outside: 0, near: 0, note: 0 };
  for (const { findings } of stops) for (const { level } of findings) counts[level]++;
  return counts;
}

/** Runs of neighbouring stations of one group: the brackets over the line. */
export function runsOf(stops: readonly Stop[]): { group: Stop['group']; from: number; to: number }[] {
  const runs: { group: Stop['group']; from: number; to: number }[] = [];
  for (const [i, { group }] of stops.entries()) {
    const last = runs[runs.length - 1];
    if (last?.group === group) last.to = i;
    else runs.push({ group, from: i, to: i });
  }
  return runs;
}

export const groupNames: Record<Stop['group'], string> = {
  heat: 'Heat',
  breakdown: 'Breakdown',
  forming: 'Forming',
  universal: 'Universal, edging',
  cold: 'Cold side',
};
