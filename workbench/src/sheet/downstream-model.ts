import { type Measure, shareOfLimit } from '@bloomrail/engine/bar/measure';
import { units } from '@bloomrail/engine/units/unit';
import type { Station } from '../compute/progress.ts';
import { decimalsFor, figure } from '../ink/numbers.ts';
import { capital } from '../ink/words.ts';
import { sameIn } from './measure-model.ts';

/** One outcome after the moved station: before, now and the limit on one scale, 0 to 1. */
export interface Outcome {
  readonly code: string;
  readonly name: string;
  readonly waiting: boolean;
  readonly before: string;
  readonly now: string;
  readonly changed: boolean;
  readonly limit: string;
  readonly ring: number;
  readonly dot: number;
  readonly mark: number;
}

/** The outcome nearest to its limit of each station from `index` on; the row never reorders while results arrive. */
export function outcomesAfter(stations: readonly Station[], index: number): Outcome[] {
  return stations.slice(index + 1).flatMap((station) => {
    const measures = (station.was ?? station.visit)?.record.measures ?? [];
    const nearest = nearestToLimit(measures);
    const now = nearest && sameIn(station.visit?.record.measures, nearest);
    return nearest && now ? [outcome(station, nearest, now)] : [];
  });
}

/** The load nearest to its limit; where there is none, the value nearest to a least one. */
function nearestToLimit(measures: readonly Measure[]): Measure | undefined {
  const limited = measures.filter(({ limit }) => limit !== undefined);
  const most = limited.filter(({ limitIs }) => limitIs !== 'least');
  const [first, ...rest] = most.length ? most : limited;
  const share = (measure: Measure) => shareOfLimit(measure) ?? 0;
  return first && rest.reduce((best, each) => (share(each) > share(best) ? each : best), first);
}

function outcome({ code, state }: Station, was: Measure, now: Measure): Outcome {
  const { unit, limit = 0, limitIs } = now;
  const decimals = decimalsFor(limit, unit);
  const [before, after] = [was.value, now.value].map((value) => figure(value, unit, decimals));
  const at = (value: number) => Math.min(1, Math.max(0, Math.abs(0.8 * value) / Math.abs(limit || 1)));
  const label = units[unit].label;
  return {
    code,
    name: `${capital([now.name, now.part].filter(Boolean).join(', '))}${label && `, ${label}`}`,
    waiting: state === 'old',
    before,
    now: after,
    changed: before !== after,
    limit: `${limitIs === 'least' ? 'at least' : 'limit'} ${figure(limit, unit, decimals)}`,
    ring: at(was.value),
    dot: at(now.value),
    mark: 0.8,
  };
}

/** Whether the last move changed anything from this station on. */
export const movedFrom = (stations: readonly Station[], index: number): boolean =>
  stations.slice(index).some(({ was }) => was !== undefined);
