import { type Bar, type PlaceName, placeNames } from '../../bar/bar.ts';

export type ByPlace<T> = Readonly<Record<PlaceName, T>>;

/** One value for each place, in the order head, middle, tail. */
export function byPlace<T>(of: (name: PlaceName) => T): ByPlace<T> {
  return { head: of('head'), middle: of('middle'), tail: of('tail') };
}

export interface Timing {
  /** s since the furnace door: when each place is in the bite. */
  readonly bite: ByPlace<number>;
  readonly firstIn: number;
  readonly lastOut: number;
  /** m/s at the rolls, as set or, between stands that share the bar, as the stand before dictates. */
  readonly rollingTime: number;
}

export interface Visit {
  readonly direction: 'forward' | 'back';
  readonly drive: 'reversing' | 'continuous';
  readonly interpass: number;
  /** s for the whole bar at the speed that is set. */
  readonly rollingTime: number;
}

/**
 * When each place of the bar passes. At a reversing stand the bar has left the stand before altogether; turned round, the
 * end that left last comes first, so that head and tail wait very differently. A continuous stand takes the bar while it
 * is still in the stand before: its own time per bar is that of the stand before.
 */
export function timingOf(bar: Bar, { direction, drive, interpass, rollingTime }: Visit): Timing {
  const [first, last]: [PlaceName, PlaceName] = direction === 'forward' ? ['head', 'tail'] : ['tail', 'head'];
  const left = Math.max(...placeNames.map((name) => bar[name].clock));
  const shared = bar[last].clock - bar[first].clock;
  const follows = drive === 'continuous' && shared > 0;
  const firstIn = (follows ? bar[first].clock : left) + interpass;
  const duration = follows ? shared : rollingTime;
  const at = { [first]: 0, middle: 0.5, [last]: 1 } as Record<PlaceName, number>;
  return {
    bite: byPlace((name) => firstIn + at[name] * duration),
    firstIn,
    lastOut: firstIn + duration,
    rollingTime: duration,
  };
}
