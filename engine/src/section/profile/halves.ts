import type { Outline, Vertex } from '../outline.ts';

/**
 * The whole outline from its right half, given clockwise from the top of the axis to its bottom. The crown arc and
 * the underside run across the axis as one edge each.
 */
export function mirroredAboutAxis(half: readonly Vertex[]): Outline {
  const inner = half.slice(1, -1);
  const crown = Math.tan(2 * Math.atan(-half[0].bulge));
  const right = inner
    .map(({ x, y }, i) => ({ x, y, bulge: i > 0 ? 0 - inner[i - 1].bulge : crown }))
    .reverse();
  const left = inner.map(({ x, y, bulge }) => ({ x: -x, y, bulge: 0 - bulge }));
  return { vertices: [...right, ...left] };
}
