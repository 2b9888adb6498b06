import type { Summary } from '@bloomrail/engine/line/summary';
import type { Visit } from '@bloomrail/engine/line/visit';
import type { Failure } from '@bloomrail/engine/outcome/result';
import type { Issue } from '@bloomrail/engine/units/issue';
import type { Answer, Content, Stop } from './messages.ts';

/** A visit under the name that all workers know it by. */
interface Stamped {
  readonly stamp: string;
  readonly visit: Visit;
}

/** One place of the line as the page knows it now. */
export interface Station extends Stop {
  /** absent: not computed. old: from before the last move, still waiting. now: answers the plan as it stands. */
  readonly state: 'absent' | 'old' | 'now';
  readonly stamp?: string;
  readonly visit?: Visit;
  /** The visit of the last settled line, where moves since then have changed it. */
  readonly was?: Visit;
}

/** The line as far as it is computed. */
export interface Progress {
  readonly run: number;
  readonly status: 'empty' | 'computing' | 'done' | 'stopped' | 'failed' | 'invalid';
  readonly stations: readonly Station[];
  readonly issues: readonly Issue[];
  readonly failure?: { readonly code: string; readonly failure: Failure };
  readonly summary?: Summary;
  /** The line of the last full result before the present moves. */
  readonly settled: readonly Stamped[];
  /** Every visit sent lately, so that a worker may name it instead of sending it again. */
  readonly sent: ReadonlyMap<string, Visit>;
}

const keptVisits = 600;

export const nothingYet: Progress = {
  run: 0,
  status: 'empty',
  stations: [],
  issues: [],
  settled: [],
  sent: new Map(),
};

/**
 * A new run was ordered. A full result becomes the state before; while moves follow each other that stays.
 * The stations are left as they are until an answer changes them, so that the picture does not flicker.
 */
export function ordered(progress: Progress, run: number): Progress {
  const { failure: _, ...rest } = progress;
  const settled = progress.status === 'done' ? progress.stations.flatMap(stamped) : progress.settled;
  return { ...rest, run, status: 'computing', issues: [], settled };
}

const stamped = ({ stamp, visit }: Station): Stamped[] => (stamp && visit ? [{ stamp, visit }] : []);

/** The page's knowledge after one more answer. Answers to earlier orders are only remembered. */
export function answered(progress: Progress, { run, contents }: Answer): Progress {
  const known = { ...progress, sent: remembered(progress.sent, contents) };
  return run === progress.run ? contents.reduce(after, known) : known;
}

function remembered(
  sent: ReadonlyMap<string, Visit>,
  contents: readonly Content[],
): ReadonlyMap<string, Visit> {
  const fresh = contents.flatMap((content) =>
    content.kind === 'visit' ? [[content.stamp, content.visit] as const] : [],
  );
  return fresh.length ? new Map([...sent, ...fresh].slice(-keptVisits)) : sent;
}

function after(progress: Progress, content: Content): Progress {
  switch (content.kind) {
    case 'issues':
      return { ...progress, status: 'invalid', issues: content.issues };
    case 'stops':
      return { ...progress, stations: stationsOf(content.stops, progress.stations) };
    case 'visit':
    case 'kept':
      return { ...progress, stations: withVisit(progress, content.index, content.stamp) };
    case 'done':
      return { ...progress, status: 'done', summary: content.summary };
    case 'stopped':
      return { ...progress, status: 'stopped' };
    case 'failed':
      return {
        ...failedAt(progress, content.code),
        failure: { code: content.code, failure: content.failure },
      };
  }
}

function stationsOf(stops: readonly Stop[], before: readonly Station[]): Station[] {
  const known = before.length === stops.length && stops.every(({ code }, i) => before[i].code === code);
  return stops.map((stop, i) => (known ? { ...before[i], ...stop } : { ...stop, state: 'absent' }));
}

/** A visit that is not the one on the page makes everything after it old until it is answered for too. */
function withVisit({ stations, settled, sent }: Progress, index: number, stamp: string): Station[] {
  const visit = sent.get(stamp);
  const same = stations[index].stamp === stamp;
  return stations.map((station, i) => {
    if (i < index || !visit) return since(settled[i], station);
    if (i === index) return since(settled[i], { ...station, state: 'now', stamp, visit });
    return since(settled[i], same || station.state !== 'now' ? station : { ...station, state: 'old' });
  });
}

/** A station beside the settled one it is compared with. */
function since(before: Stamped | undefined, station: Station): Station {
  const was = before && before.stamp !== station.stamp ? before.visit : undefined;
  if (station.was === was) return station;
  const { was: _, ...rest } = station;
  return was ? { ...rest, was } : rest;
}

/** From the station without an answer on, nothing of the old results stands. */
function failedAt(progress: Progress, code: string): Progress {
  const at = progress.stations.findIndex((station) => station.code === code);
  const stations = progress.stations.map(
    (station, i): Station => (i >= at ? { ...station, state: station.visit ? 'old' : 'absent' } : station),
  );
  return { ...progress, status: 'failed', stations };
}
