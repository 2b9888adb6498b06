/**
 * Solves the symmetric 3×3 system [a b c; b d e; c e f]·z = r by elimination, writes to `z`; false unless positive
 * definite. `m` holds (a, b, c, d, e, f) from index `at` on.
 */
export function solveSymmetric3(m: Float64Array, at: number, r: Float64Array, z: Float64Array): boolean {
  const [a, b, c] = [m[at], m[at + 1], m[at + 2]];
  const [l1, l2] = [b / a, c / a];
  const d = m[at + 3] - l1 * b;
  const e = m[at + 4] - l1 * c;
  const l3 = e / d;
  const f = m[at + 5] - l2 * c - l3 * e;
  if (!(a > 0 && d > 0 && f > 0)) return false;
  const y1 = r[1] - l1 * r[0];
  const y2 = r[2] - l2 * r[0] - l3 * y1;
  z[2] = y2 / f;
  z[1] = (y1 - e * z[2]) / d;
  z[0] = (r[0] - b * z[1] - c * z[2]) / a;
  return true;
}
