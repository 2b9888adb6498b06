import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { BarHere, Stop } from './line-model.ts';

/** One stretch of the temperature axis; a line with a cold side has two, the axis being split between them. */
export interface Stretch {
  readonly y: ScaleLinear<number, number>;
  readonly top: number;
  readonly bottom: number;
  readonly ticks: readonly number[];
}

const coldSteel = 600;

/** Temperature axis of the line: the hot stretch gets most of the lane, steel on the cold side a short one below. */
export function temperatureStretches(bars: readonly BarHere[], top: number, bottom: number): Stretch[] {
  const hot = bars.filter(({ mean }) => mean > coldSteel);
  const cold = hot.length < bars.length;
  const lowest = Math.min(1100, ...hot.map(({ surface, core }) => Math.min(surface, core)));
  const highest = Math.max(1150, ...hot.map(({ surface, core }) => Math.max(surface, core)));
  const [from, to] = [100 * Math.floor(lowest / 100), 50 * Math.ceil(highest / 50)];
  const break_ = cold ? bottom - 44 : bottom;
  const hotStretch = stretch([from, to], top, break_, 4);
  return cold ? [hotStretch, stretch([0, from], bottom - 32, bottom, 1)] : [hotStretch];
}

function stretch(domain: [number, number], top: number, bottom: number, count: number): Stretch {
  const y = scaleLinear().domain(domain).range([bottom, top]);
  return { y, top, bottom, ticks: count === 1 ? domain : y.ticks(count) };
}

/** Axis of the length lane, m down from the head of the bar. */
export function lengthScale(stops: readonly Stop[], top: number, bottom: number) {
  const longest = Math.max(10, ...stops.map(({ bar }) => bar?.length ?? 0));
  return scaleLinear().domain([0, longest]).nice(4).range([top, bottom]);
}

/** Stations whose mean temperature is written out: the first, and the last of every group while hot. */
export function labelled(stops: readonly Stop[]): number[] {
  return stops.flatMap(({ group, bar }, i) => {
    const last = stops[i + 1]?.group !== group || !stops[i + 1]?.bar;
    return bar && (i === 0 || last || (group === 'cold' && stops[i - 1]?.group !== 'cold')) ? [i] : [];
  });
}
