import { orient2d } from 'robust-predicates';

/**
 * Triangles of a simple polygon, counter-clockwise: corners that hold no other corner are cut off one after another,
 * with exact signs. Slower than a sweep but never misled by nearly straight rows of corners. Undefined when no
 * corner can be cut off, which only happens to polygons that cross or touch themselves.
 */
export function earClipped(xy: ArrayLike<number>): number[] | undefined {
  const left = Array.from({ length: xy.length / 2 }, (_, i) => i);
  const triangles: number[] = [];
  let [at, tried] = [0, 0];
  while (left.length > 2) {
    const n = left.length;
    const [a, b, c] = [left[(at + n - 1) % n], left[at % n], left[(at + 1) % n]];
    if (isEar(xy, left, a, b, c)) {
      triangles.push(a, b, c);
      left.splice(at % n, 1);
      // Skipping one corner keeps the cut-off triangles from fanning around a single one.
      [at, tried] = [(at % n) + 1, 0];
    } else if (++tried > n) return undefined;
    else at = (at + 1) % n;
  }
  return triangles;
}

function isEar(xy: ArrayLike<number>, left: readonly number[], a: number, b: number, c: number): boolean {
  if (side(xy, a, b, c) <= 0) return false;
  return left.every(
    (p) =>
      p === a ||
      p === b ||
      p === c ||
      side(xy, a, b, p) < 0 ||
      side(xy, b, c, p) < 0 ||
      side(xy, c, a, p) < 0,
  );
}

/** Positive when corner p lies to the left of the way from a to b. */
const side = (xy: ArrayLike<number>, a: number, b: number, p: number): number =>
  -orient2d(xy[2 * a], xy[2 * a + 1], xy[2 * b], xy[2 * b + 1], xy[2 * p], xy[2 * p + 1]);
