import { incircle, orient2d } from 'robust-predicates';

/**
 * A Delaunay triangulation that grows. Half edge 3t + k runs from corner k of triangle t to its next corner,
 * with the triangle on its left; its twin is the same edge seen from the neighbour, -1 on the boundary.
 */
export interface Triangulation {
  /** x0, y0, x1, y1, … */
  readonly xy: number[];
  /** Node from which each half edge starts. */
  readonly triangles: number[];
  readonly twins: number[];
}

export const nextEdge = (edge: number): number => (edge % 3 === 2 ? edge - 2 : edge + 1);

export const startOf = ({ triangles }: Triangulation, edge: number): number => triangles[edge];

export const endOf = ({ triangles }: Triangulation, edge: number): number => triangles[nextEdge(edge)];

/** Positive when the point lies to the left of a half edge; the sign is exact. */
export function leftOf(t: Triangulation, edge: number, x: number, y: number): number {
  const [a, b] = [2 * startOf(t, edge), 2 * endOf(t, edge)];
  return -orient2d(t.xy[a], t.xy[a + 1], t.xy[b], t.xy[b + 1], x, y);
}

/** Whether the point lies inside the circle through a triangle's corners; the sign is exact. */
export function inCircumcircle(
  { xy, triangles }: Triangulation,
  triangle: number,
  x: number,
  y: number,
): boolean {
  const [a, b, c] = [
    2 * triangles[3 * triangle],
    2 * triangles[3 * triangle + 1],
    2 * triangles[3 * triangle + 2],
  ];
  return incircle(xy[a], xy[a + 1], xy[b], xy[b + 1], xy[c], xy[c + 1], x, y) > 0;
}

/** The triangles that a new point takes away, and the half edges around them from which it makes new ones. */
export interface Cavity {
  readonly triangles: number[];
  readonly rim: number[];
}

/** Bowyer 1981, Watson 1981: every triangle whose circumcircle holds the point, reached from one that does. */
export function cavityAround(t: Triangulation, seed: number, x: number, y: number, opened = -1): Cavity {
  const triangles = [seed];
  const rim: number[] = [];
  for (let i = 0; i < triangles.length; i++) {
    for (let edge = 3 * triangles[i]; edge < 3 * triangles[i] + 3; edge++) {
      if (edge === opened) continue;
      const twin = t.twins[edge];
      const beyond = twin < 0 ? -1 : Math.floor(twin / 3);
      if (beyond >= 0 && triangles.includes(beyond)) continue;
      if (beyond >= 0 && (inCircumcircle(t, beyond, x, y) || leftOf(t, edge, x, y) <= 0))
        triangles.push(beyond);
      else rim.push(edge);
    }
  }
  return {
    triangles,
    rim: rim.filter((edge) => t.twins[edge] < 0 || !triangles.includes(Math.floor(t.twins[edge] / 3))),
  };
}

/** Whether the point sees every edge of the rim from inside: what makes the new triangles turn the right way. */
export const seesRim = (t: Triangulation, { rim }: Cavity, x: number, y: number): boolean =>
  rim.every((edge) => leftOf(t, edge, x, y) > 0);

/** Puts a point into its cavity and returns the triangles around it; the point's node is the last one. */
export function fillCavity(t: Triangulation, { triangles, rim }: Cavity, x: number, y: number): number[] {
  const node = t.xy.push(x, y) / 2 - 1;
  const outer = rim.map((edge) => ({ from: startOf(t, edge), to: endOf(t, edge), twin: t.twins[edge] }));
  const slots = outer.map((_, i) => triangles[i] ?? addTriangle(t));
  const slotFrom = new Map(outer.map(({ from }, i) => [from, slots[i]]));
  for (const slot of slots) t.twins[3 * slot + 2] = -1;
  outer.forEach(({ from, to, twin }, i) => {
    const edge = 3 * slots[i];
    const after = slotFrom.get(to);
    [t.triangles[edge], t.triangles[edge + 1], t.triangles[edge + 2]] = [from, to, node];
    join(t.twins, edge, twin);
    join(t.twins, edge + 1, after === undefined ? -1 : 3 * after + 2);
  });
  return slots;
}

function addTriangle({ triangles, twins }: Triangulation): number {
  twins.push(-1, -1, -1);
  return triangles.push(0, 0, 0) / 3 - 1;
}

/** Turns the shared edge of two triangles whose circumcircles hold each other's far corner, until none is left. */
export function flipToDelaunay(t: Triangulation): void {
  const waiting = t.twins.map((_, edge) => edge);
  for (let edge = waiting.pop(); edge !== undefined; edge = waiting.pop()) {
    const twin = t.twins[edge];
    if (twin < 0) continue;
    const far = 2 * t.triangles[nextEdge(nextEdge(twin))];
    if (!inCircumcircle(t, Math.floor(edge / 3), t.xy[far], t.xy[far + 1])) continue;
    flip(t, edge, twin);
    for (const each of [edge, twin]) {
      const first = each - (each % 3);
      waiting.push(first, first + 1, first + 2);
    }
  }
}

/**
 *         c                 c
 *       ╱   ╲             ╱ │ ╲
 *      a──e──b     →     a  │  b
 *       ╲   ╱             ╲ │ ╱
 *         d                 d
 */
function flip({ triangles, twins }: Triangulation, edge: number, twin: number): void {
  const [ca, db] = [nextEdge(nextEdge(edge)), nextEdge(nextEdge(twin))];
  const [beyondCa, beyondDb] = [twins[ca], twins[db]];
  triangles[edge] = triangles[db];
  triangles[twin] = triangles[ca];
  join(twins, edge, beyondDb);
  join(twins, twin, beyondCa);
  join(twins, ca, db);
}

function join(twins: number[], edge: number, other: number): void {
  twins[edge] = other;
  if (other >= 0) twins[other] = edge;
}
