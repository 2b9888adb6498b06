import type { Field } from '../outcome/field.ts';

/** Bounds per parameter; an absent row is unbounded, and single entries may be infinite. */
export interface Box {
  readonly low?: Field;
  readonly high?: Field;
}

/** Moves each coordinate onto the nearest point of the box, in place. */
export function intoBox(point: Float64Array, { low, high }: Box): Float64Array {
  for (let i = 0; i < point.length; i++) {
    if (low && point[i] < low[i]) point[i] = low[i];
    if (high && point[i] > high[i]) point[i] = high[i];
  }
  return point;
}

/**
 * A free number z for each coordinate x of a box: every z lies inside, and smoothly so.
 * Source: the transformations of F. James, M. Roos, Comput. Phys. Commun. 10 (1975) 343, scaled by `size`; from memory.
 */
export function freed(x: number, i: number, box: Box, size: number): number {
  const { low, high } = limits(box, i);
  if (Number.isFinite(low) && Number.isFinite(high)) {
    return high > low ? Math.asin(Math.max(-1, Math.min(1, (2 * (x - low)) / (high - low) - 1))) : 0;
  }
  if (Number.isFinite(low)) return Math.sqrt((Math.max(0, x - low) / size + 1) ** 2 - 1);
  if (Number.isFinite(high)) return Math.sqrt((Math.max(0, high - x) / size + 1) ** 2 - 1);
  return x / size;
}

/** The way back: x from z. */
export function boxed(z: number, i: number, box: Box, size: number): number {
  const { low, high } = limits(box, i);
  if (Number.isFinite(low) && Number.isFinite(high)) return low + ((high - low) * (1 + Math.sin(z))) / 2;
  if (Number.isFinite(low)) return low + size * (Math.sqrt(z * z + 1) - 1);
  if (Number.isFinite(high)) return high - size * (Math.sqrt(z * z + 1) - 1);
  return z * size;
}

const limits = ({ low, high }: Box, i: number) => ({
  low: low?.[i] ?? Number.NEGATIVE_INFINITY,
  high: high?.[i] ?? Number.POSITIVE_INFINITY,
});
