import type { DrawnSquares } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/squares';
import type { CellStretch } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/stretch';
import { dimension } from './dimension.ts';
import type { Item, Spot } from './drawing.ts';
import { gridItems, ringSpots } from './drawn-squares-grid.ts';
import { hatched } from './drawn-squares-hatching.ts';
import { shadeOf, type Tint, type TintScale, tints } from './drawn-squares-tint.ts';
import { graduatedFrame } from './graduated-frame.ts';

/** A framed part of the paper, mm; all fields stand equally high. */
export interface Field {
  readonly left: number;
  readonly width: number;
}

export const fieldHeight = 206;
const bottomOfFields = 62;

/** Extent of squares in the section, mm. */
export interface Extent {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

export function extentOf({ points }: DrawnSquares): Extent {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 2) {
    [left, right] = [Math.min(left, points[i]), Math.max(right, points[i])];
    [bottom, top] = [Math.min(bottom, points[i + 1]), Math.max(top, points[i + 1])];
  }
  return {
    left: left * 1e3,
    bottom: bottom * 1e3,
    width: (right - left) * 1e3,
    height: (top - bottom) * 1e3,
  };
}

/** Squares as they stand in one field. */
export interface Shown {
  readonly caption: string;
  readonly squares: DrawnSquares;
  readonly hatching?: Hatching;
  /** Other squares, dashed under them. */
  readonly under?: DrawnSquares;
}

export interface Hatching {
  readonly made: readonly CellStretch[];
  readonly tint: Tint;
  readonly scale: TintScale;
}

/** Frame, squares, caption and overall dimensions. */
export function fieldItems(
  field: Field,
  ratio: number,
  { caption, squares, hatching, under }: Shown,
): Item[] {
  const extent = extentOf(squares);
  const zero = zeroOf(field, ratio, under ? extentOf(under) : extent);
  const at = (x: number, y: number): Spot => ({ x: zero.x + ratio * x, y: zero.y + ratio * y });
  const frame = {
    ...field,
    bottom: bottomOfFields,
    height: fieldHeight,
    bar: barLength(ratio) * ratio,
    zero,
  };
  const captionAt = { x: field.left + 4, y: bottomOfFields + fieldHeight - 8 };
  return [
    ...graduatedFrame(frame),
    ...(under ? gridItems(under, at, 'dashed') : []),
    ...(hatching ? hatchItems(squares, at, hatching) : []),
    ...gridItems(squares, at, hatching ? 'outline' : 'thin'),
    ...dimensionItems(extent, under ? extentOf(under) : extent, at, ratio),
    { kind: 'text', at: captionAt, text: caption, size: 3.5, anchor: 'start', bold: true },
  ];
}

/** Where the section's zero lies, so that it stands in the middle of its field with room for dimensions. */
const zeroOf = (field: Field, ratio: number, { left, bottom, width, height }: Extent): Spot => ({
  x: field.left + (field.width - ratio * width) / 2 - ratio * left + 4,
  y: bottomOfFields + (fieldHeight - ratio * height) / 2 - ratio * bottom + 4,
});

/** Bars of the frame: a round length, mm, of 5 to 12 mm on the paper. */
export const barLength = (ratio: number): number =>
  [0.5, 1, 2, 5, 10, 20, 50].find((mm) => mm * ratio >= 5) ?? 100;

function hatchItems(
  { cells, points }: DrawnSquares,
  at: (x: number, y: number) => Spot,
  { made, tint, scale }: Hatching,
): Item[] {
  return made.flatMap((stretch) =>
    hatched(ringSpots(cells[stretch.cell].ring, points, at), shadeOf(tints[tint].of(stretch), scale)),
  );
}

/** Width below and height to the left, clear of whatever else is drawn. */
function dimensionItems(
  { left, bottom, width, height }: Extent,
  other: Extent,
  at: (x: number, y: number) => Spot,
  ratio: number,
): Item[] {
  const below = 9 + ratio * Math.max(0, bottom - other.bottom);
  const beside = 9 + ratio * Math.max(0, left - other.left);
  return [
    ...dimension(at(left, bottom), at(left + width, bottom), -below, width.toFixed(1)),
    ...dimension(at(left, bottom + height), at(left, bottom), -beside, height.toFixed(1)),
  ];
}
