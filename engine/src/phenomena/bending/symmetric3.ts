/**
 * Solves the symmetric 3×3 system [a b c; b d e; c e f]·z = r by elimination, writes to `z`; false unless positive
 * definite. `m` holds (a, b, c, d, e, f) from index `at` on. An unknown whose row is all zero is taken as zero: a section
 * of layers has no stiffness across them.
 */
export function solveSymmetric3(m: Float64Array, at: number, r: Float64Array, z: Float64Array): boolean {
  const [a, b, c] = [m[at], m[at + 1], m[at + 2]];
  const [d0, e0, f0] = [m[at + 3], m[at + 4], m[at + 5]];
  const [noHeight, noSide] = [b === 0 && d0 === 0 && e0 === 0, c === 0 && e0 === 0 && f0 === 0];
  const l1 = b / a;
  const l2 = c / a;
  const d = noHeight ? 1 : d0 - l1 * b;
  const e = e0 - l1 * c;
  const l3 = e / d;
  const f = noSide ? 1 : f0 - l2 * c - l3 * e;
  if (!(a > 0 && d > 0 && f > 0)) return false;
  const y1 = r[1] - l1 * r[0];
  const y2 = r[2] - l2 * r[0] - l3 * y1;
  z[2] = noSide ? 0 : y2 / f;
  z[1] = noHeight ? 0 : (y1 - e * z[2]) / d;
  z[0] = (r[0] - b * z[1] - c * z[2]) / a;
  return true;
}
