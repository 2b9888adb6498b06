import type { CoolingBedRecord } from '@bloomrail/engine/stations/cooling-bed/record';

/** Rise of a bar of this length and camber over its own chord, m: κL²/8 while the bend is shallow. */
export const riseOf = (camber: number, length: number): number => (camber * length * length) / 8;

/** One bar on the bed in plan. */
export interface BentBar {
  readonly time: number;
  readonly mean: number;
  /** m over the chord, head outside positive. */
  readonly rise: number;
}

/** About `count` moments that show the bending: evenly spaced on a logarithmic clock, ends included. */
export function bentBars({ time, mean, heightCamber, coldLength }: CoolingBedRecord, count = 10): BentBar[] {
  const start = Math.max(time[0], 20);
  const end = time[time.length - 1];
  const wanted = Array.from({ length: count }, (_, i) => start * (end / start) ** (i / (count - 1)));
  const rows = [...new Set(wanted.map((at) => nearest(time, at)))];
  return rows.map((i) => ({ time: time[i], mean: mean[i], rise: riseOf(heightCamber[i], coldLength) }));
}

function nearest(times: ArrayLike<number>, at: number): number {
  let best = 0;
  for (let i = 1; i < times.length; i++) if (Math.abs(times[i] - at) < Math.abs(times[best] - at)) best = i;
  return best;
}

/** A factor for drawing bends: 1, 2, 5, 10 … or 0.5, 0.2 …, the largest at which the largest bend fits the room. */
export function exaggeration(largest: number, room: number): number {
  const wanted = room / Math.max(largest, 1e-9);
  const decade = 10 ** Math.floor(Math.log10(wanted));
  const step = [5, 2, 1].find((each) => each * decade <= wanted * (1 + 1e-12)) ?? 1;
  return Number((step * decade).toPrecision(3));
}

const [barApart, clear] = [24, 12];

/** Height on the sheet of each bar's chord: enough for its bend to stay clear of the bar before. Rises in pixels. */
export function chordsDown(rises: readonly number[]): number[] {
  const chords: number[] = [];
  for (const [i, rise] of rises.entries()) {
    const before = rises[i - 1] ?? 0;
    chords.push(i === 0 ? 0 : chords[i - 1] + Math.max(barApart, clear + rise - before));
  }
  return chords;
}
