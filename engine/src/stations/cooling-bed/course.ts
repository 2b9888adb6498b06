import type { RailNodes } from '../../phenomena/bending/rail-nodes.ts';
import { meanOver, type TriMesh } from '../../section/mesh.ts';
import type { Cooling } from './cooling.ts';
import type { CoolingTimes } from './record.ts';

/** Temperatures of the parts of a section over the times of a cooling, °C. */
export interface Course {
  readonly time: readonly number[];
  readonly head: readonly number[];
  readonly web: readonly number[];
  readonly footTip: readonly number[];
  readonly mean: readonly number[];
  readonly pearliteMean: readonly number[];
}

export function courseOf(mesh: TriMesh, nodes: RailNodes, cooling: Cooling): Course {
  const { times, temperature, pearlite } = cooling;
  const [left, right] = nodes.footTips;
  return {
    time: Array.from(times),
    head: temperature.map((T) => T[nodes.head]),
    web: temperature.map((T) => T[nodes.web]),
    footTip: temperature.map((T) => Math.max(T[left], T[right])),
    mean: temperature.map((T) => meanOver(mesh, T)),
    pearliteMean: pearlite.map((share) => Math.min(1, meanOver(mesh, share))),
  };
}

/** The last row again: a bar that was held shows there how it bends once it is let go. */
export function letGo(course: Course): Course {
  const again = (row: readonly number[]) => [...row, row[row.length - 1]];
  const { time, head, web, footTip, mean, pearliteMean } = course;
  return {
    time: again(time),
    head: again(head),
    web: again(web),
    footTip: again(footTip),
    mean: again(mean),
    pearliteMean: again(pearliteMean),
  };
}

const passed = [600, 400, 100, 80] as const;

/** When head, web, foot tip and mean pass 600, 400, 100 and 80 °C; what is not reached is left out. */
export function coolingTimes({ time, head, web, footTip, mean }: Course): CoolingTimes[] {
  return passed.map((below) => {
    const parts = { head, web, footTip, mean };
    const times: Partial<Record<keyof typeof parts, number>> = {};
    for (const [part, row] of Object.entries(parts)) {
      const at = lastPassing(time, row, below);
      if (at !== undefined) times[part as keyof typeof parts] = at;
    }
    return { below, ...times };
  });
}

/** Time from which a row stays below a limit, straight between its points. */
export function lastPassing(
  time: readonly number[],
  row: readonly number[],
  limit: number,
): number | undefined {
  for (let k = row.length - 1; k > 0; k--) {
    if (row[k] > limit) return undefined;
    if (row[k - 1] <= limit) continue;
    const share = (row[k - 1] - limit) / (row[k - 1] - row[k]);
    return time[k - 1] + share * (time[k] - time[k - 1]);
  }
  return undefined;
}

/** How often a row turns from rising to falling or back by more than `least`. */
export function turningPoints(row: ArrayLike<number>, least: number): number {
  let [turns, way, extreme] = [0, 0, row[0]];
  for (let k = 1; k < row.length; k++) {
    const back = row[k] - extreme;
    if (way * back >= 0) extreme = row[k];
    if (Math.abs(back) < least) continue;
    if (way * back < 0) turns++;
    if (way * back <= 0) [way, extreme] = [Math.sign(back), row[k]];
  }
  return turns;
}

/** Least share of pearlite that any node has where it passes `start`, °C: what is missing there can turn to martensite. */
export function pearliteAt({ temperature, pearlite }: Cooling, start: number): number {
  let least = 1;
  for (let k = 1; k < temperature.length; k++) {
    for (let i = 0; i < temperature[k].length; i++) {
      if (temperature[k - 1][i] > start && temperature[k][i] <= start)
        least = Math.min(least, pearlite[k - 1][i]);
    }
  }
  return least;
}

/** Fastest cooling of any node from 700 to 600 °C, K/s; 0 where no node passes both. */
export function fastestCooling({ times, temperature }: Cooling): number {
  const time = Array.from(times);
  let fastest = 0;
  for (let i = 0; i < temperature[0].length; i++) {
    const row = temperature.map((T) => T[i]);
    const from = lastPassing(time, row, 700);
    const to = lastPassing(time, row, 600);
    if (from !== undefined && to !== undefined && to > from) fastest = Math.max(fastest, 100 / (to - from));
  }
  return fastest;
}
