import type { Bar } from './bar.ts';

/** The same bar with new pieces; what is missing from its length has left, and took its share of the mass with it. */
export function withPieces(bar: Bar, pieces: readonly number[]): Bar {
  const length = pieces.reduce((sum, piece) => sum + piece, 0);
  return { ...bar, pieces, length, mass: (bar.mass * length) / bar.length };
}
