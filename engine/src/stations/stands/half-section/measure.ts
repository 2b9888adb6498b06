import { segmentMoments } from '../../../section/circular-segment.ts';
import type { Path } from '../../../section/outline.ts';
import { heightOf, piecesOf } from './pieces.ts';

/** Area between a path and the axis, m², exact for lines and arcs; half of the section's. */
export function areaUnder({ vertices }: Path): number {
  let area = 0;
  for (let i = 0; i + 1 < vertices.length; i++) {
    const [from, to] = [vertices[i], vertices[i + 1]];
    area += ((to.x - from.x) * (from.y + to.y)) / 2;
    if (from.bulge !== 0)
      area -= segmentMoments(Math.hypot(to.x - from.x, to.y - from.y) / 2, from.bulge).area;
  }
  return area;
}

/** The part of that area between two places along the rolls, m². */
export function areaBetween(path: Path, from: number, to: number): number {
  let area = 0;
  for (const piece of piecesOf(path)) {
    const [x0, x1] = [Math.max(piece.x0, from), Math.min(piece.x1, to)];
    if (x1 <= x0) continue;
    const [y0, y1] = [heightOf(piece, x0), heightOf(piece, x1)];
    area += ((x1 - x0) * (y0 + y1)) / 2;
    if (piece.r === 0) continue;
    const half = Math.hypot(x1 - x0, y1 - y0) / 2;
    const angle = 2 * Math.asin(Math.min(1, half / piece.r));
    area += (piece.side * piece.r * piece.r * (angle - Math.sin(angle))) / 2;
  }
  return area;
}

/** Highest vertex between two places, m. */
export function highestBetween(path: Path, from: number, to: number): number {
  let highest = 0;
  for (const piece of piecesOf(path)) {
    const [x0, x1] = [Math.max(piece.x0, from), Math.min(piece.x1, to)];
    if (x1 <= x0) continue;
    highest = Math.max(highest, heightOf(piece, x0), heightOf(piece, x1));
    if (piece.side > 0 && piece.cx > x0 && piece.cx < x1) highest = Math.max(highest, piece.cy + piece.r);
  }
  return highest;
}

export const leftOf = ({ vertices }: Path): number => vertices[0].x;

export const rightOf = ({ vertices }: Path): number => vertices[vertices.length - 1].x;
