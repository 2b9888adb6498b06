/** Rails of one length that are still to be cut. */
export interface Wanted {
  /** m */
  readonly length: number;
  readonly count: number;
}

/** Rails to cut from one bar, longest first, and the bars to cut so. */
export interface Pattern {
  readonly rails: readonly number[];
  readonly bars: number;
}

/**
 * Ways to cut equal bars until every wanted rail is cut: always the fullest pattern that the remaining order allows,
 * repeated as often as it fits. Rails longer than the bar are left out; the caller says so.
 * Not the proven minimum of bars over the whole order; each single pattern is.
 *
 * usable   m of straight bar, ends already taken off
 * kerf     m lost by each cut between two rails
 */
export function cutOrder(wanted: readonly Wanted[], usable: number, kerf: number): Pattern[] {
  const open = wanted.filter(({ length }) => length <= usable).map((each) => ({ ...each }));
  const patterns: Pattern[] = [];
  while (open.some(({ count }) => count > 0)) {
    const taken = fullestPattern(open, usable, kerf);
    const bars = Math.min(
      ...open.map(({ count }, i) => (taken[i] > 0 ? Math.floor(count / taken[i]) : Infinity)),
    );
    open.forEach((each, i) => {
      each.count -= taken[i] * bars;
    });
    patterns.push({
      rails: open.flatMap(({ length }, i) => Array(taken[i]).fill(length)).sort((a, b) => b - a),
      bars,
    });
  }
  return patterns;
}

/**
 * How many of each length fill one bar best: bounded knapsack on a grid of 1 mm, lengths rounded up so that
 * every pattern really fits. One kerf more than cuts between rails is granted, as n rails need n − 1 of them.
 */
export function fullestPattern(open: readonly Wanted[], usable: number, kerf: number): number[] {
  const room = Math.floor((usable + kerf) / GRID + 1e-6);
  const size = open.map(({ length }) => Math.ceil((length + kerf) / GRID - 1e-6));
  const best = new Float64Array(room + 1);
  const choice = open.map(() => new Uint16Array(room + 1));
  open.forEach((item, i) => {
    const before = best.slice();
    for (let at = size[i]; at <= room; at++) {
      for (let n = 1; n <= item.count && n * size[i] <= at; n++) {
        const used = before[at - n * size[i]] + n * item.length;
        if (used <= best[at] + 1e-9) continue;
        best[at] = used;
        choice[i][at] = n;
      }
    }
  });
  return traceBack(size, choice, room);
}

function traceBack(size: readonly number[], choice: readonly Uint16Array[], room: number): number[] {
  const taken = size.map(() => 0);
  for (let i = size.length - 1, at = room; i >= 0; i--) {
    taken[i] = choice[i][at];
    at -= taken[i] * size[i];
  }
  return taken;
}

const GRID = 1e-3;
