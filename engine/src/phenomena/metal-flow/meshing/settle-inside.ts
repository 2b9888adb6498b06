import type { Indices } from '../../../outcome/field.ts';
import { elementSine } from './element-shape.ts';
import { elementsAround, meanMiddle } from './neighbours.ts';

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
    for (let node = 0; node < fixed.length; node++) {
      if (fixed[node]) continue;
      const [x, y] = meanMiddle(quads, xy, around, node);
      next[2 * node] = (xy[2 * node] + x) / 2;
      next[2 * node + 1] = (xy[2 * node + 1] + y) / 2;
    }
    keepWhereSound(xy, next, quads);
    xy.set(next);
  }
}

/** Elements that became sharper by the moves of their nodes get their old places back, until none has. */
function keepWhereSound(xy: Float64Array, next: Float64Array, quads: Indices): void {
  for (let spoilt = true; spoilt; ) {
    spoilt = false;
    for (let k = 0; 4 * k < quads.length; k++) {
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
