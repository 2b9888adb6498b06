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
