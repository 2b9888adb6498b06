/** Black bars between two ends: every second one, the first of them starting at zero. */
export function barsBetween(from: number, to: number, zero: number, bar: number): [number, number][] {
  const bars: [number, number][] = [];
  for (let k = Math.floor((from - zero) / bar); zero + k * bar < to; k++) {
    if (k % 2 === 0) bars.push([Math.max(from, zero + k * bar), Math.min(to, zero + (k + 1) * bar)]);
  }
  return bars;
}

/** Length of one bar, m: the round 1, 2 or 5 whose length on the screen is nearest to `wanted` pixels. */
export function barLength(pixelsPerMetre: number, wanted = 30): number {
  const target = wanted / pixelsPerMetre;
  const decade = 10 ** Math.floor(Math.log10(target));
  const round = [1, 2, 5, 10].map((step) => step * decade);
  const miss = (length: number) => Math.abs(Math.log(length / target));
  return round.reduce((best, each) => (miss(each) < miss(best) ? each : best));
}
