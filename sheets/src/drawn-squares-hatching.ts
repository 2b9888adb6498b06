import type { Item, Spot } from './drawing.ts';

/** Shades from none to the densest: tints that a grey printer and a colour-weak eye tell apart as anyone does. */
export const shades = 6;

/** mm between the densest lines. */
const spacing = 0.7;

/** Per shade, every how many-th line is drawn rising and falling; 0 none. Coverage grows from 0 to about 60 %. */
const lines = [
  [0, 0],
  [4, 0],
  [2, 0],
  [1, 0],
  [1, 2],
  [1, 1],
] as const;

/**
 * Hatching of a closed ring of spots in one of the shades, at 45°. Lines are counted from the paper's corner, so that
 * neighbours of one shade are hatched through. A shade below the first is none, above the last the densest.
 */
export function hatched(ring: readonly Spot[], shade: number): Item[] {
  const [rising, falling] = lines[Math.min(shades - 1, Math.max(0, shade))];
  return [...family(ring, 1, rising), ...family(ring, -1, falling)];
}

/** Lines y = slope x + level, slope 1 or -1. */
function family(ring: readonly Spot[], slope: 1 | -1, every: number): Item[] {
  if (every === 0) return [];
  const step = every * spacing * Math.SQRT2;
  const levels = ring.map(({ x, y }) => y - slope * x);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const items: Item[] = [];
  for (let n = Math.ceil(low / step); n * step < high; n++) {
    const meets = crossings(ring, levels, n * step);
    for (let i = 0; i + 1 < meets.length; i += 2) {
      const spot = (x: number): Spot => ({ x, y: slope * x + n * step });
      items.push({ kind: 'line', from: spot(meets[i]), to: spot(meets[i + 1]), stroke: 'thin' });
    }
  }
  return items;
}

/** x where a line of that level meets the ring, ascending. */
function crossings(ring: readonly Spot[], levels: readonly number[], level: number): number[] {
  const found: number[] = [];
  for (let i = 0; i < ring.length; i++) {
    const next = (i + 1) % ring.length;
    const [a, b] = [levels[i], levels[next]];
    if (a < level !== b < level) found.push(ring[i].x + ((level - a) / (b - a)) * (ring[next].x - ring[i].x));
  }
  return found.sort((p, q) => p - q);
}
