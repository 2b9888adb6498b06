import { edgeBetween, pointAt } from '../../../section/edges.ts';
import type { Path, Vertex } from '../../../section/outline.ts';

/** Where a point of the entering half section goes; must not fold. */
export type Draw = (x: number, y: number) => readonly [x: number, y: number];

/** A path drawn out: lines stay lines, each arc becomes the arc through its drawn ends and middle. */
export function drawn({ vertices }: Path, draw: Draw): Path {
  const moved = vertices.map(({ x, y }) => draw(x, y));
  return {
    vertices: vertices.map((vertex, i): Vertex => {
      const [x, y] = moved[i];
      if (vertex.bulge === 0 || i + 1 === vertices.length) return { x, y, bulge: 0 };
      const middle = pointAt(edgeBetween(vertex, vertices[i + 1]), 0.5);
      return { x, y, bulge: bulgeThrough(moved[i], draw(middle.x, middle.y), moved[i + 1]) };
    }),
  };
}

/** Bulge of the arc from a over m to b: its angle is twice the turn at m. */
function bulgeThrough(
  a: readonly [number, number],
  m: readonly [number, number],
  b: readonly [number, number],
): number {
  const [ux, uy, vx, vy] = [m[0] - a[0], m[1] - a[1], b[0] - m[0], b[1] - m[1]];
  return Math.tan(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 2);
}
