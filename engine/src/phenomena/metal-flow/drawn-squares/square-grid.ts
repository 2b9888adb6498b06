import { fail, ok, type Result } from '../../../outcome/result.ts';
import { cutAt } from '../../../section/cut.ts';
import { edgesOf, nearestOn } from '../../../section/edges.ts';
import type { Outline } from '../../../section/outline.ts';
import { boundsOf, sectionProperties } from '../../../section/properties.ts';
import type { Symmetry } from '../quad-mesh.ts';
import { type RingPoint, ringOf } from './cell-ring.ts';
import type { DrawnSquares, SquareCell } from './squares.ts';

/** More squares than this are no picture any more. */
const mostSquares = 20_000;

/** Part-cells below this share of a square are left out. */
const leastShare = 1e-9;

/**
 * Squares with sides along x and y over a whole section: lines at multiples of `side` (m) from `through.x` and
 * `through.y`, from the middle of the section where these are not given. Laid through its lines of symmetry, a section's
 * squares are their own mirror images. The outline's arcs are kept in points.
 *
 * Lay it on the outline that the flow is computed with (outlineOf of its mesh), so that the skin is the same in both.
 * Fails when the side is not positive or gives more than 20 000 squares.
 */
export function squareGrid(outline: Outline, side: number, through: Symmetry = {}): Result<DrawnSquares> {
  const { left, right, bottom, top } = boundsOf(edgesOf(outline));
  const count = ((right - left) / side + 2) * ((top - bottom) / side + 2);
  if (!(side > 0 && count <= mostSquares)) {
    const given = `Squares of ${(side * 1e3).toFixed(2)} mm`;
    return fail({ model: 'drawn squares', reason: `${given} do not suit a section of this size.` });
  }
  const [x, y] = [through.x ?? (left + right) / 2, through.y ?? (bottom + top) / 2];
  const pieces = strips([outline], 'x', x, side).flatMap(({ number: column, parts }) =>
    strips(parts, 'y', y, side).flatMap(({ number: row, parts: cells }) =>
      cells.map((part) => ({ column, row, part })),
    ),
  );
  return ok(numbered(outline, pieces, { x, y, side }));
}

interface Piece {
  readonly column: number;
  readonly row: number;
  readonly part: Outline;
}

/** Strip n lies between the lines at origin + n side and origin + (n + 1) side. */
interface Strip {
  readonly number: number;
  readonly parts: Outline[];
}

function strips(parts: readonly Outline[], axis: 'x' | 'y', origin: number, side: number): Strip[] {
  if (parts.length === 0) return [];
  const bounds = parts.map((part) => boundsOf(edgesOf(part)));
  const low = Math.min(...bounds.map(({ left, bottom }) => (axis === 'x' ? left : bottom)));
  const high = Math.max(...bounds.map(({ right, top }) => (axis === 'x' ? right : top)));
  const found: Strip[] = [];
  let rest = [...parts];
  for (let n = Math.floor((low - origin) / side); origin + n * side < high; n++) {
    const cuts = rest.map((part) => cutAt(part, axis, origin + (n + 1) * side));
    found.push({ number: n, parts: cuts.flatMap(({ below }) => below) });
    rest = cuts.flatMap(({ above }) => above);
  }
  return found;
}

/** The grid that the pieces were cut by. */
interface Lines {
  readonly x: number;
  readonly y: number;
  readonly side: number;
}

/** Gives every point one number, though several cells meet in it. */
function numbered(outline: Outline, pieces: readonly Piece[], lines: Lines): DrawnSquares {
  const { side } = lines;
  const points: number[] = [];
  const known = new Map<string, number>();
  const numberOf = ({ x, y }: RingPoint): number => {
    const key = `${nearly((x - lines.x) / side)} ${nearly((y - lines.y) / side)}`;
    const number = known.get(key) ?? points.push(x, y) / 2 - 1;
    known.set(key, number);
    return number;
  };
  const cells = pieces.flatMap(({ column, row, part }): SquareCell[] => {
    const { area } = sectionProperties(part);
    if (!(area > leastShare * side * side)) return [];
    const ring = ringOf(part, lines).map((point) => ({ number: numberOf(point), isCorner: point.isCorner }));
    const corners = ring.filter(({ isCorner }) => isCorner).map(({ number }) => number);
    const isWhole = area > (1 - 1e-9) * side * side;
    return [{ column, row, isWhole, ring: ring.map(({ number }) => number), corners }];
  });
  return { side, points, skin: onSkin(outline, points, side), cells };
}

/** In ten-millionths of a side; 0 whatever its sign. */
const nearly = (share: number): number => Math.round(share * 1e7) + 0;

/** Numbers of the points on the outline. */
function onSkin(outline: Outline, points: readonly number[], side: number): number[] {
  const edges = edgesOf(outline);
  const skin: number[] = [];
  for (let i = 0; 2 * i < points.length; i++) {
    if (nearestOn(edges, points[2 * i], points[2 * i + 1]).distance < 1e-7 * side) skin.push(i);
  }
  return skin;
}
