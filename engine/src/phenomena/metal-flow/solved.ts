import type { Level } from './bite.ts';
import type { Settling } from './march-until.ts';

/** The finest level, its last march, and what it took. */
export interface Solved {
  readonly level: Level;
  readonly last: Settling;
  readonly marches: number;
  readonly rejected: number;
  /** Times the pass was begun again with other slices. */
  readonly restarts: number;
}
