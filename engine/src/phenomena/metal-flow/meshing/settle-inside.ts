import type { Indices } from '../../../outcome/field.ts';
import { elementSine } from './corner-sine.ts';
import { type ElementsAround, elementsAround, meanMiddle, sharpestAround } from './neighbours.ts';

/** Corners better than this may give some of it for even spacing. */
const plenty = 0.6;
const sweeps = 6;

/**
 * Moves nodes inside half way to the mean of the middles of their elements, where no corner around gets sharper by it.
 * All move from the same places at once, so that a mirror image stays one.
 */
export function settleInside(xy: Float64Array, quads: Indices, loop: Indices): void {
  const around = elementsAround(quads, xy.length / 2);
  const fixed = new Uint8Array(xy.length / 2);
  for (const node of loop) fixed[node] = 1;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const next = xy.slice();
    for (let node = 0; node < fixed.length; node++) if (!fixed[node]) propose(xy, quads, around, node, next);
    keepWhereSound(xy, next, quads, around);
    xy.set(next);
  }
}

function propose(
  xy: Float64Array,
  quads: Indices,
  around: ElementsAround,
  node: number,
  next: Float64Array,
): void {
  const [x, y] = [xy[2 * node], xy[2 * node + 1]];
  const before = sharpestAround(quads, xy, around, node);
  const [middleX, middleY] = meanMiddle(quads, xy, around, node);
  xy[2 * node] = (x + middleX) / 2;
  xy[2 * node + 1] = (y + middleY) / 2;
  if (sharpestAround(quads, xy, around, node) >= Math.min(before, plenty)) {
    next[2 * node] = xy[2 * node];
    next[2 * node + 1] = xy[2 * node + 1];
  }
  xy[2 * node] = x;
  xy[2 * node + 1] = y;
}

/** Moves that are sound one by one may not be so together: elements that lost by them get their old places back. */
function keepWhereSound(
  xy: Float64Array,
  next: Float64Array,
  quads: Indices,
  { elements }: ElementsAround,
): void {
  for (let spoilt = true; spoilt; ) {
    spoilt = false;
    for (let k = 0; 4 * k < elements.length; k++) {
      const now = elementSine(quads, next, k);
      if (now >= plenty || now >= elementSine(quads, xy, k)) continue;
      for (let corner = 4 * k; corner < 4 * k + 4; corner++) {
        const node = 2 * quads[corner];
        if (next[node] !== xy[node] || next[node + 1] !== xy[node + 1]) spoilt = true;
        next[node] = xy[node];
        next[node + 1] = xy[node + 1];
      }
    }
  }
}
