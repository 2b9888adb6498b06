import { flipToDelaunay, nextEdge, type Triangulation } from './triangulation.ts';

/**
 * Moves inner nodes towards the mean of their neighbours where the thinnest triangle around gets no thinner,
 * then restores the Delaunay property. Boundary nodes stay.
 */
export function smooth(t: Triangulation, sweeps: number): void {
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const edgeAt = oneEdgePerInnerNode(t);
    for (let node = 0; node < edgeAt.length; node++) if (edgeAt[node] >= 0) settle(t, node, edgeAt[node]);
    flipToDelaunay(t);
  }
}

function oneEdgePerInnerNode({ xy, triangles, twins }: Triangulation): Int32Array {
  const edgeAt = new Int32Array(xy.length / 2).fill(-1);
  for (let edge = 0; edge < triangles.length; edge++) edgeAt[triangles[edge]] = edge;
  for (let edge = 0; edge < triangles.length; edge++) {
    if (twins[edge] < 0) edgeAt[triangles[edge]] = edgeAt[triangles[nextEdge(edge)]] = -1;
  }
  return edgeAt;
}

/** Above this angle a triangle is good enough to trade some of it for even spacing: sin 36°. */
const goodEnough = 0.588;

function settle(t: Triangulation, node: number, first: number): void {
  const { xy, triangles } = t;
  let [x, y, count] = [0, 0, 0];
  for (let edge = first; count === 0 || edge !== first; edge = nextAround(t, edge)) {
    const neighbour = 2 * triangles[nextEdge(edge)];
    x += xy[neighbour];
    y += xy[neighbour + 1];
    count++;
  }
  const [oldX, oldY] = [xy[2 * node], xy[2 * node + 1]];
  const before = thinnestAround(t, first);
  xy[2 * node] = x / count;
  xy[2 * node + 1] = y / count;
  if (thinnestAround(t, first) >= Math.min(before, goodEnough)) return;
  xy[2 * node] = oldX;
  xy[2 * node + 1] = oldY;
}

/** The next half edge that starts at the same node, clockwise. */
const nextAround = ({ twins }: Triangulation, edge: number): number => nextEdge(twins[edge]);

/** Sine of the smallest angle in the triangles around a node; negative where one is turned over. */
function thinnestAround(t: Triangulation, first: number): number {
  let thinnest = 1;
  let edge = first;
  do {
    thinnest = Math.min(thinnest, sineOfSmallestAngle(t, Math.floor(edge / 3)));
    edge = nextAround(t, edge);
  } while (edge !== first);
  return thinnest;
}

/** Twice the area over the product of the two longer edges. */
export function sineOfSmallestAngle({ xy, triangles }: Triangulation, triangle: number): number {
  const e = 3 * triangle;
  const [a, b, c] = [2 * triangles[e], 2 * triangles[e + 1], 2 * triangles[e + 2]];
  const [bx, by, cx, cy] = [xy[b] - xy[a], xy[b + 1] - xy[a + 1], xy[c] - xy[a], xy[c + 1] - xy[a + 1]];
  const [ab, ac, bc] = [bx * bx + by * by, cx * cx + cy * cy, (bx - cx) ** 2 + (by - cy) ** 2];
  return (bx * cy - by * cx) / Math.sqrt((ab * ac * bc) / Math.min(ab, ac, bc));
}
