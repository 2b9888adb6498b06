import { type Corner, filleted } from '../../../section/filleted.ts';
import type { Path } from '../../../section/outline.ts';
import type { BoxGroove, FlatGroove, FormerGroove, FreeGroove } from './groove.ts';

/** Collars are drawn this far beyond the walls, m: farther than any fin. */
const collarReach = 0.15;

/** The top roll at the groove's own gap, from left to right; y is the half height. */
export function flatProfile({ gap, width }: FlatGroove): Path {
  const y = gap / 2;
  return { vertices: [at(-width / 2, y), at(width / 2, y)] };
}

export function boxProfile({ gap, height, bottom, wall, bottomRadius, collarRadius }: BoxGroove): Path {
  const [y, deep, half] = [gap / 2, height / 2, bottom / 2];
  const mouth = half + wall * (deep - y);
  return rounded([
    [-mouth - collarReach, y, 0],
    [-mouth, y, collarRadius],
    [-half, deep, bottomRadius],
    [half, deep, bottomRadius],
    [mouth, y, collarRadius],
    [mouth + collarReach, y, 0],
  ]);
}

/**
 *     collar ──╮    ╭─ foot ─╮          web           ╭─ head ─╮    ╭── collar
 *              ╰────╯         ╲______________________╱          ╰────╯
 *   footWall                webFootEnd          webHeadEnd        headWall
 */
export function formerProfile(groove: FormerGroove): Path {
  const { footHalf, headHalf, webFootEnd, webHeadEnd, footWall, headWall, wall } = groove;
  const { collarRadius, flankRadius, footBottomRadius, headBottomRadius } = groove;
  const [collar, web, headEnd] = [groove.gap / 2, groove.web / 2, headHalf - groove.headTaper];
  return rounded([
    [footWall - collarReach, collar, 0],
    [footWall, collar, collarRadius],
    [footWall + wall * (footHalf - collar), footHalf, footBottomRadius],
    [webFootEnd - (footHalf - web) * Math.tan(groove.footFlank), footHalf, flankRadius],
    [webFootEnd, web, groove.footWebRadius],
    [webHeadEnd, web, groove.headWebRadius],
    [webHeadEnd + (headHalf - web) * Math.tan(groove.headFlank), headHalf, flankRadius],
    [headWall - wall * (headHalf - collar), headEnd, headBottomRadius],
    [headWall, collar, collarRadius],
    [headWall + collarReach, collar, 0],
  ]);
}

export function freeProfile({ corners, vertices }: FreeGroove): Path {
  if (vertices) return { vertices: vertices.vertices };
  return { vertices: filleted(corners ?? [], false) };
}

export const rounded = (corners: readonly (readonly [x: number, y: number, radius: number])[]): Path => ({
  vertices: filleted(
    corners.map(([x, y, radius]): Corner => ({ x, y, radius })),
    false,
  ),
});

const at = (x: number, y: number) => ({ x, y, bulge: 0 });
