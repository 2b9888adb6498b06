import type { Visit } from '@bloomrail/engine/line/run-line';
import type { Summary } from '@bloomrail/engine/line/summary';
import type { Failure } from '@bloomrail/engine/outcome/result';
import type { Issue } from '@bloomrail/engine/units/issue';
import type { Answer, Stop } from './messages.ts';

/** One place of the line as the page knows it now. */
export interface Station extends Stop {
  /** absent: not computed. old: from before the last move, still waiting. now: answers the plan as it stands. */
  readonly state: 'absent' | 'old' | 'now';
  readonly visit?: Visit;
  /** The visit before the last move, where that move changed it. */
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
}

export const nothingYet: Progress = { run: 0, status: 'empty', stations: [], issues: [] };

/** A new run was ordered. What is settled becomes the state before; while moves follow each other it stays. */
export function ordered(progress: Progress, run: number): Progress {
  const settled = progress.status === 'done';
  const { failure: _, ...rest } = progress;
  return {
    ...rest,
    run,
    status: 'computing',
    issues: [],
    stations: settled ? progress.stations.map(withoutWas) : progress.stations,
  };
}

const withoutWas = ({ was: _, ...station }: Station): Station => station;

/** The page's knowledge after one more answer. Answers to earlier orders are passed over. */
export function answered(progress: Progress, answer: Answer): Progress {
  if (answer.run !== progress.run) return progress;
  switch (answer.kind) {
    case 'issues':
      return { ...progress, status: 'invalid', issues: answer.issues };
    case 'stops':
      return { ...progress, stations: stationsOf(answer.stops, progress.stations) };
    case 'visit':
      return { ...progress, stations: withVisit(progress.stations, answer.index, answer.visit) };
    case 'kept':
      return { ...progress, stations: withKept(progress.stations, answer.index) };
    case 'done':
      return { ...progress, status: 'done', summary: answer.summary };
    case 'stopped':
      return { ...progress, status: 'stopped' };
    case 'failed':
      return { ...failedAt(progress, answer.code), failure: { code: answer.code, failure: answer.failure } };
  }
}

function stationsOf(stops: readonly Stop[], before: readonly Station[]): Station[] {
  const known = before.length === stops.length && stops.every(({ code }, i) => before[i].code === code);
  return stops.map((stop, i) => (known ? { ...before[i], ...stop } : { ...stop, state: 'absent' }));
}

/** A fresh visit makes everything after it old until it is computed too. */
function withVisit(stations: readonly Station[], index: number, visit: Visit): Station[] {
  return stations.map((station, i) => {
    if (i < index) return station;
    if (i > index) return station.state === 'now' ? { ...station, state: 'old' } : station;
    const was = station.was ?? station.visit;
    return { ...station, state: 'now', visit, ...(was ? { was } : {}) };
  });
}

const withKept = (stations: readonly Station[], index: number): Station[] =>
  stations.map((station, i) => (i === index && station.visit ? { ...station, state: 'now' } : station));

/** From the station without an answer on, nothing of the old results stands. */
function failedAt(progress: Progress, code: string): Progress {
  const at = progress.stations.findIndex((station) => station.code === code);
  const stations = progress.stations.map(
    (station, i): Station => (i >= at ? { ...station, state: station.visit ? 'old' : 'absent' } : station),
  );
  return { ...progress, status: 'failed', stations };
}
