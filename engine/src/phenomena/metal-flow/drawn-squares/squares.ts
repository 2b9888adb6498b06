/**
 * Squares drawn on a section before rolling, as on the cut face of a model block: what of the picture was where before
 * and after a pass is what the metal did. Plain data, to be written into a record as it stands; m.
 */
export interface DrawnSquares {
  /** Length of a side as drawn, before any rolling. */
  readonly side: number;
  /** x0, y0, x1, y1, …: close enough to each other along the lines to draw them as curves. */
  readonly points: readonly number[];
  /** Numbers of the points that were drawn on the skin. */
  readonly skin: readonly number[];
  readonly cells: readonly SquareCell[];
}

/** One square, or at the skin what the outline leaves of it. */
export interface SquareCell {
  /** Counted from the lines that the grid was laid through: cell 0, 0 is the one right of and above them. */
  readonly column: number;
  readonly row: number;
  readonly isWhole: boolean;
  /** Point numbers once around, counter-clockwise as drawn. */
  readonly ring: readonly number[];
  /** Those points of the ring in which the cell has its corners: four for a whole square. */
  readonly corners: readonly number[];
}
