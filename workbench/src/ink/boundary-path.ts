import type { Place } from './section-map.ts';

/** The edge of a triangulation as one path: every side that only one triangle has. */
export function boundaryPath(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  triangles: ArrayLike<number>,
  place: Place,
): string {
  const sides = new Map<string, readonly [number, number]>();
  for (let t = 0; t < triangles.length; t++) {
    const [a, b] = [triangles[t], triangles[t % 3 === 2 ? t - 2 : t + 1]];
    if (!sides.delete(`${b} ${a}`)) sides.set(`${a} ${b}`, [a, b]);
  }
  const next = new Map([...sides.values()]);
  let path = '';
  while (next.size > 0) {
    const start = next.keys().next().value as number;
    let at: number | undefined = start;
    for (let first = true; at !== undefined && next.has(at); first = false) {
      path += `${first ? 'M' : 'L'}${place.x(x[at]).toFixed(1)} ${place.y(y[at]).toFixed(1)}`;
      const following: number | undefined = next.get(at);
      next.delete(at);
      at = following;
    }
    path += 'Z';
  }
  return path;
}
