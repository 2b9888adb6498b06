import type { Field, Indices } from '../../../outcome/field.ts';
import { jacobianShare } from '../quad-mesh.ts';

/**
 * Smallest sine of all corner angles at the node places `xy`: 1 when every element is a rectangle, 0 or less where one
 * has folded. Infinite for no elements.
 */
export function smallestCornerSine(quads: Indices, xy: Field): number {
  let smallest = Number.POSITIVE_INFINITY;
  for (let k = 0; 4 * k < quads.length; k++) {
    const sine = elementSine(quads, xy, k);
    if (sine < smallest) smallest = sine;
  }
  return smallest;
}

/** Smallest sine of the four corner angles of element k; an edge of no length counts as 0. */
export function elementSine(quads: Indices, xy: Field, k: number): number {
  const a = 2 * quads[4 * k];
  const b = 2 * quads[4 * k + 1];
  const c = 2 * quads[4 * k + 2];
  const d = 2 * quads[4 * k + 3];
  const px = xy[b] - xy[a];
  const py = xy[b + 1] - xy[a + 1];
  const qx = xy[c] - xy[b];
  const qy = xy[c + 1] - xy[b + 1];
  const rx = xy[d] - xy[c];
  const ry = xy[d + 1] - xy[c + 1];
  const sx = xy[a] - xy[d];
  const sy = xy[a + 1] - xy[d + 1];
  const p = Math.sqrt(px * px + py * py);
  const q = Math.sqrt(qx * qx + qy * qy);
  const r = Math.sqrt(rx * rx + ry * ry);
  const s = Math.sqrt(sx * sx + sy * sy);
  if (!(p * q * r * s > 0)) return 0;
  const atA = (sx * py - sy * px) / (s * p);
  const atB = (px * qy - py * qx) / (p * q);
  const atC = (qx * ry - qy * rx) / (q * r);
  const atD = (rx * sy - ry * sx) / (r * s);
  return Math.min(Math.min(atA, atB), Math.min(atC, atD));
}

/**
 * How well shaped element k is: its smallest corner sine, or its smallest corner's Jacobian over the mean of all four where
 * that is less. Elements that are pressed flat keep their angles for long, but not that.
 */
export const elementShape = (quads: Indices, xy: Field, k: number): number =>
  Math.min(elementSine(quads, xy, k), jacobianShare(quads, xy, k));
