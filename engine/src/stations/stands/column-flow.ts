import type { Origin } from '../../bar/carry.ts';
import { linear } from '../../numerics/interpolation.ts';
import type { Path } from '../../section/outline.ts';
import { heightAt, heightOf, type Piece, piecesOf } from './half-section/pieces.ts';

/**
 * Where a point of the leaving section was in the entering one. The bar leaves as one length, so every part of it gives
 * up the same share of its area: upright columns keep their order, as many hundredths of the section stay to their left,
 * and heights are drawn in evenly from the axis. Areas shrink alike everywhere, to the fineness of the columns.
 *
 * entry, exit   upper halves.
 */
export function flowBack(entry: Path, exit: Path): Origin {
  const [before, after] = [piecesOf(entry), piecesOf(exit)];
  const [was, is] = [columnsOf(before), columnsOf(after)];
  const shareAt = linear(is.places, is.shares);
  const placeAt = linear(was.shares, was.places);
  return (x, y) => {
    const origin = placeAt(shareAt(x));
    const height = heightAt(after, x);
    return [origin, height > 0 ? (y * heightAt(before, origin)) / height : y];
  };
}

/** Columns to each line or arc: areas are exact over lines, within 1e-6 over arcs. */
const columnsPerPiece = 12;

/** m: lower columns hold nothing and would stand on the place of their neighbour. */
const leastColumn = 1e-9;

interface Columns {
  /** m along the rolls, and the share of the area to the left of each place, 0 to 1. */
  readonly places: number[];
  readonly shares: number[];
}

function columnsOf(pieces: readonly Piece[]): Columns {
  const places = [pieces[0].x0];
  const areas = [0];
  let area = 0;
  for (const piece of pieces) {
    const width = (piece.x1 - piece.x0) / columnsPerPiece;
    for (let k = 0; k < columnsPerPiece; k++) {
      const x = piece.x0 + k * width;
      const more = simpson(piece, x, x + width);
      // Where a side hangs over, the columns behind it are already counted.
      const ahead = x + width > places[places.length - 1];
      if (!ahead || !(more > leastColumn * width)) continue;
      area += more;
      places.push(x + width);
      areas.push(area);
    }
  }
  return { places, shares: areas.map((each) => each / area) };
}

const simpson = (piece: Piece, x0: number, x1: number): number =>
  ((x1 - x0) * (heightOf(piece, x0) + 4 * heightOf(piece, (x0 + x1) / 2) + heightOf(piece, x1))) / 6;
