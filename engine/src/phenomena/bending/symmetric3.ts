/** Solves the symmetric 3×3 system [a b c; b d e; c e f]·z = r by elimination; `m` is (a, b, c, d, e, f). Writes to `z`. */
export function solveSymmetric3(m: Float64Array, r: Float64Array, z: Float64Array): boolean {
  const l1 = m[1] / m[0];
  const l2 = m[2] / m[0];
  const d = m[3] - l1 * m[1];
  const e = m[4] - l1 * m[2];
  const l3 = e / d;
  const f = m[5] - l2 * m[2] - l3 * e;
  if (!(m[0] > 0 && d > 0 && f > 0)) return false;
  const y1 = r[1] - l1 * r[0];
  const y2 = r[2] - l2 * r[0] - l3 * y1;
  z[2] = y2 / f;
  z[1] = (y1 - e * z[2]) / d;
  z[0] = (r[0] - m[1] * z[1] - m[2] * z[2]) / m[0];
  return true;
}
