import type { Field } from '../../../outcome/field.ts';
import { outlineThrough } from '../../../section/flatten.ts';
import type { Outline } from '../../../section/outline.ts';
import { moved, turned } from '../../../section/transform.ts';

/** How a bar is handled between two passes: turned about the origin, rad, counter-clockwise, then moved, m. */
export interface Placing {
  readonly turn: number;
  readonly dx: number;
  readonly dy: number;
}

/** The bar goes on as it left. */
export const asItLies: Placing = { turn: 0, dx: 0, dy: 0 };

/** Quarter turns are exact. */
export const placedOutline = (outline: Outline, { turn, dx, dy }: Placing): Outline =>
  moved(turned(outline, turn), dx, dy);

/** Points x0, y0, … moved with the bar. */
export const placedPoints = (points: Field, placing: Placing): number[] =>
  placedOutline(outlineThrough(points), placing).vertices.flatMap(({ x, y }) => [x, y]);
