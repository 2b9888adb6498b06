import type { Progress } from '../compute/progress.ts';

/** How far the line is computed, in one phrase. */
export function stateInWords({ status, stations, failure, issues }: Progress): string {
  const ready = stations.filter(({ state }) => state === 'now').length;
  switch (status) {
    case 'empty':
      return 'Nothing planned yet';
    case 'computing':
      return stations.length ? `Computing, ${ready} of ${stations.length} stations` : 'Computing';
    case 'done':
      return 'Full result';
    case 'stopped':
      return `Stopped, ${ready} of ${stations.length} stations`;
    case 'failed':
      return `No answer at ${failure?.code}`;
    case 'invalid':
      return `Not computed: ${issues.length} ${issues.length === 1 ? 'value does' : 'values do'} not fit`;
  }
}
