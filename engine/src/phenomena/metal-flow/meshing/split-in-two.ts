import type { Field, Indices } from '../../../outcome/field.ts';

/** Two triangles for each element, cut along the diagonal whose sharpest corner is the wider. */
export function inTwo(quads: Indices, xy: Field): Int32Array {
  const triangles = new Int32Array(1.5 * quads.length);
  for (let k = 0; 4 * k < quads.length; k++) {
    const [a, b, c, d] = [quads[4 * k], quads[4 * k + 1], quads[4 * k + 2], quads[4 * k + 3]];
    const acrossA = Math.min(sharpest(xy, a, b, c), sharpest(xy, a, c, d));
    const acrossB = Math.min(sharpest(xy, a, b, d), sharpest(xy, b, c, d));
    triangles.set(acrossA >= acrossB ? [a, b, c, a, c, d] : [a, b, d, b, c, d], 6 * k);
  }
  return triangles;
}

/** Sine of a triangle's smallest angle: twice its area over the product of its longer edges; negative when turned over. */
function sharpest(xy: Field, a: number, b: number, c: number): number {
  const [px, py] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
  const [qx, qy] = [xy[2 * c] - xy[2 * a], xy[2 * c + 1] - xy[2 * a + 1]];
  const [p, q, r] = [px * px + py * py, qx * qx + qy * qy, (px - qx) ** 2 + (py - qy) ** 2];
  const longer = p * q * r > 0 ? Math.sqrt((p * q * r) / Math.min(p, q, r)) : 1;
  return (px * qy - py * qx) / longer;
}
