import type { DrawnSquares } from './squares.ts';

/** What became of one drawn square: plain data. Means over the cell. */
export interface CellStretch {
  /** Its number among the cells of the squares. */
  readonly cell: number;
  readonly column: number;
  readonly row: number;
  readonly isWhole: boolean;
  /** Where its corners are now, m. */
  readonly corners: readonly (readonly [number, number])[];
  /** Area as drawn and now, m². */
  readonly areaBefore: number;
  readonly area: number;
  /** Length along the bar over that before: what area was given up, since steel keeps its volume. */
  readonly along: number;
  /** In the plane of the section: length over that before along the two directions that stayed square, greater first. */
  readonly principal: readonly [number, number];
  /** rad from the x axis: where the greater of them points now, between -π/2 and π/2. */
  readonly direction: number;
  /** Green and Lagrange's strain in the plane of the section, along the lines as drawn. */
  readonly strain: { readonly xx: number; readonly yy: number; readonly xy: number };
  /** rad by which the right angle between the lines closed (+, at the lower left corner) or opened (−). */
  readonly shear: number;
}

/** Part-cells below this share of a square are smaller than what a mesh resolves. */
const leastShare = 0.05;

/**
 * Cells of the squares `before` compared with the same cells `after`; both hold the same ones. Left out are part-cells
 * under a twentieth of a square, and cells that a mesh too coarse for the squares has turned over.
 */
export function stretches(before: DrawnSquares, after: DrawnSquares): CellStretch[] {
  return before.cells.flatMap((_, number) => {
    const { ring } = before.cells[number];
    const [areaBefore, area] = [ringArea(ring, before.points), ringArea(ring, after.points)];
    const counts = areaBefore >= leastShare * before.side ** 2 && area > 0;
    return counts ? [stretchOf(number, before, after, areaBefore, area)] : [];
  });
}

function stretchOf(
  number: number,
  before: DrawnSquares,
  after: DrawnSquares,
  areaBefore: number,
  area: number,
): CellStretch {
  const { column, row, isWhole, ring, corners } = before.cells[number];
  const F = meanGradient(ring, before.points, after.points, areaBefore);
  const strain = {
    xx: (F.xx * F.xx + F.yx * F.yx - 1) / 2,
    yy: (F.xy * F.xy + F.yy * F.yy - 1) / 2,
    xy: (F.xx * F.xy + F.yx * F.yy) / 2,
  };
  return {
    cell: number,
    column,
    row,
    isWhole,
    corners: corners.map((point) => [after.points[2 * point], after.points[2 * point + 1]] as const),
    areaBefore,
    area,
    along: areaBefore / area,
    ...principalOf(F),
    strain,
    shear: Math.asin(clamped((2 * strain.xy) / Math.sqrt((1 + 2 * strain.xx) * (1 + 2 * strain.yy)))),
  };
}

/** Area inside a ring of points, m². */
export function ringArea(ring: readonly number[], points: readonly number[]): number {
  let twice = 0;
  const [x0, y0] = [points[2 * ring[0]], points[2 * ring[0] + 1]];
  for (let i = 1; i + 1 < ring.length; i++) {
    const [a, b] = [2 * ring[i], 2 * ring[i + 1]];
    twice += (points[a] - x0) * (points[b + 1] - y0) - (points[b] - x0) * (points[a + 1] - y0);
  }
  return twice / 2;
}

/** Deformation gradient: xy is what a step along y as drawn adds to x. */
interface Gradient {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
}

/** Mean gradient over a cell from its ring alone (Gauss): exact for a ring of straight pieces of any shape. */
function meanGradient(
  ring: readonly number[],
  before: readonly number[],
  after: readonly number[],
  area: number,
): Gradient {
  const [x0, y0] = [after[2 * ring[0]], after[2 * ring[0] + 1]];
  let [xx, xy, yx, yy] = [0, 0, 0, 0];
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [2 * ring[i], 2 * ring[(i + 1) % ring.length]];
    const [dX, dY] = [before[b] - before[a], before[b + 1] - before[a + 1]];
    const [x, y] = [(after[a] + after[b]) / 2 - x0, (after[a + 1] + after[b + 1]) / 2 - y0];
    xx += x * dY;
    xy -= x * dX;
    yx += y * dY;
    yy -= y * dX;
  }
  return { xx: xx / area, xy: xy / area, yx: yx / area, yy: yy / area };
}

/** Singular values of the gradient, and the direction of the greater one in the section as it is now. */
function principalOf({ xx, xy, yx, yy }: Gradient): Pick<CellStretch, 'principal' | 'direction'> {
  const [bxx, byy, bxy] = [xx * xx + xy * xy, yx * yx + yy * yy, xx * yx + xy * yy];
  const [middle, radius] = [(bxx + byy) / 2, Math.hypot((bxx - byy) / 2, bxy)];
  const greater = Math.sqrt(middle + radius);
  return {
    principal: [greater, Math.abs(xx * yy - xy * yx) / greater],
    direction: Math.atan2(2 * bxy, bxx - byy) / 2,
  };
}

const clamped = (sine: number): number => Math.min(1, Math.max(-1, sine));
