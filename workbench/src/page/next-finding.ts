import type { Stop } from '../line/line-model.ts';

/** The next station with a finding, around the end of the line if need be; from the line itself the first or last one. */
export function nextFinding(stops: readonly Stop[], at: number, way: 1 | -1): number {
  const from = at < 0 && way < 0 ? 0 : at;
  for (let k = 1; k <= stops.length; k++) {
    const i = (from + way * k + stops.length) % stops.length;
    if (stops[i].findings.length) return i;
  }
  return at;
}
