import type { DrawnSquares } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/squares';
import type { Item, Spot, Stroke } from './drawing.ts';

/** From mm in the section to the paper. */
export type Place = (x: number, y: number) => Spot;

export const ringSpots = (ring: readonly number[], points: readonly number[], at: Place): Spot[] =>
  ring.map((point) => at(points[2 * point] * 1e3, points[2 * point + 1] * 1e3));

/**
 * The sides of all cells, a side that two cells share drawn once. The skin is drawn as an outline unless all is dashed.
 * Straight sides are one line from corner to corner, so that dashes meet where lines cross.
 */
export function gridItems(squares: DrawnSquares, at: Place, stroke: Stroke): Item[] {
  const sides = new Map<string, Side>();
  for (const cell of squares.cells) {
    const ring = withoutStraight(cell.ring, squares.points);
    for (const [i, from] of ring.entries()) {
      const to = ring[(i + 1) % ring.length];
      const other = sides.get(`${to} ${from}`);
      if (other) other.isSkin = false;
      else sides.set(`${from} ${to}`, { from, to, isSkin: true });
    }
  }
  return [...sides.values()].map(({ from, to, isSkin }): Item => {
    const [a, b] = ringSpots([from, to], squares.points, at);
    return { kind: 'line', from: a, to: b, stroke: isSkin && stroke !== 'dashed' ? 'outline' : stroke };
  });
}

/** A stretch of line between two points; of the skin as long as only one cell has it. */
interface Side {
  readonly from: number;
  readonly to: number;
  isSkin: boolean;
}

/** The ring without the points that stand on a straight line between their neighbours. */
const withoutStraight = (ring: readonly number[], points: readonly number[]): number[] =>
  ring.filter((point, i) => {
    const [before, after] = [ring[(i + ring.length - 1) % ring.length], ring[(i + 1) % ring.length]];
    const [ux, uy] = [points[2 * point] - points[2 * before], points[2 * point + 1] - points[2 * before + 1]];
    const [wx, wy] = [points[2 * after] - points[2 * point], points[2 * after + 1] - points[2 * point + 1]];
    return Math.abs(ux * wy - uy * wx) > 1e-6 * Math.hypot(ux, uy) * Math.hypot(wx, wy);
  });
