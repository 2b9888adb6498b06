import { useMemo } from 'react';
import type { Station } from '../compute/progress.ts';
import type { Json } from '../plan/plan-file.ts';
import { useBench } from './bench-context.ts';

/** The stations as they are to be drawn: now, or before the present moves while that is held. */
export function useStations(): readonly Station[] {
  const stations = useBench(({ progress }) => progress.stations);
  const before = useBench((bench) => bench.before);
  return useMemo(() => (before ? stations.map(asItWas) : stations), [stations, before]);
}

function asItWas({ was, ...station }: Station): Station {
  return was ? { ...station, state: 'now', visit: was } : station;
}

/** The plan whose values are to be shown beside those stations. */
export const usePlan = (): Json =>
  useBench(({ before, settledPlan, history }) => (before ? settledPlan : history.plan));
