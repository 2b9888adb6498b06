import { sum } from '../numerics/sum.ts';
import type { Bar } from './bar.ts';

/** The same bar with new pieces; what is missing from its length has left, and took its share of the mass with it. */
export function withPieces(bar: Bar, pieces: readonly number[]): Bar {
  const length = sum(pieces);
  return { ...bar, pieces, length, mass: (bar.mass * length) / bar.length };
}
