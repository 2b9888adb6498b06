import type { Path, Vertex } from '../../../section/outline.ts';

/** One line or arc of a path that runs from left to right, as a function y(x). */
export interface Piece {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly slope: number;
  /** Radius of an arc, m; 0 for a line. */
  readonly r: number;
  readonly cx: number;
  readonly cy: number;
  /** +1 on the upper half of its circle, −1 on the lower. */
  readonly side: number;
}

/** The edges of a path that have an extent in x, in order; upright edges are the jumps between them. */
export function piecesOf({ vertices }: Path): Piece[] {
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < vertices.length; i++) {
    if (vertices[i + 1].x - vertices[i].x > 1e-12) pieces.push(pieceBetween(vertices[i], vertices[i + 1]));
  }
  return pieces;
}

function pieceBetween(from: Vertex, to: Vertex): Piece {
  const [dx, dy, b] = [to.x - from.x, to.y - from.y, from.bulge];
  const line = { x0: from.x, x1: to.x, y0: from.y, slope: dy / dx, r: 0, cx: 0, cy: 0, side: 0 };
  if (Math.abs(b) < 1e-9) return line;
  // The centre stands to the left of the chord when the arc turns left by less than half a turn.
  const left = (1 - b * b) / (4 * b);
  const [cx, cy] = [(from.x + to.x) / 2 - dy * left, (from.y + to.y) / 2 + dx * left];
  return { ...line, r: Math.hypot(from.x - cx, from.y - cy), cx, cy, side: b < 0 ? 1 : -1 };
}

export function heightOf(piece: Piece, x: number): number {
  if (piece.r === 0) return piece.y0 + piece.slope * (x - piece.x0);
  const d = x - piece.cx;
  return piece.cy + piece.side * Math.sqrt(Math.max(0, piece.r * piece.r - d * d));
}

/** Bulge of the part of a piece between two places. */
export function bulgeBetween(piece: Piece, x0: number, x1: number): number {
  if (piece.r === 0) return 0;
  const chord = Math.hypot(x1 - x0, heightOf(piece, x1) - heightOf(piece, x0));
  return -piece.side * Math.tan(Math.asin(Math.min(1, chord / (2 * piece.r))) / 2);
}

/** Half height at x; the higher one at a jump, 0 outside. */
export function heightAt(pieces: readonly Piece[], x: number): number {
  let height = 0;
  for (const piece of pieces) {
    if (x >= piece.x0 && x <= piece.x1) height = Math.max(height, heightOf(piece, x));
  }
  return height;
}
