import type { Field } from '../../outcome/field.ts';
import type { TriMesh } from '../../section/mesh.ts';

/**
 * Emissivity with which each boundary edge of a section radiates into the open, when what it sees of itself is as hot as
 * it is. On the convex hull that is the surface's own. A hollow, such as the chamber between head and foot of a rail,
 * radiates through its mouth alone: a grey hollow of surface A and mouth M, both per metre of bar, gives off
 *
 *     σ (T⁴ − Ta⁴) / [(1 − ε)/(ε A) + 1/M]        so that each edge has  1 / [(1 − ε)/ε + A/M]
 *
 * (enclosure of two grey surfaces, heat-transfer textbooks). Spread evenly over the hollow, which in truth cools faster
 * near its mouth.
 */
export function openEmissivity(mesh: TriMesh, emissivity: number): Float64Array {
  const { xy, boundary } = mesh;
  const edges = boundary.length / 2;
  const onHull = hullNodes(xy, boundary);
  const effective = new Float64Array(edges).fill(emissivity);
  const first = boundaryStart(boundary, onHull);
  for (let done = 0; done < edges; ) {
    const from = (first + done) % edges;
    let [surface, count] = [0, 0];
    do {
      surface += lengthOf(xy, boundary, (from + count) % edges);
      count++;
    } while (!onHull.has(boundary[2 * ((from + count) % edges)]));
    const mouth = distance(xy, boundary[2 * from], boundary[2 * ((from + count) % edges)]);
    const share = 1 / ((1 - emissivity) / emissivity + surface / mouth);
    for (let e = 0; e < count; e++) effective[(from + e) % edges] = share;
    done += count;
  }
  return effective;
}

/** Boundary edges follow each other; the first that begins on the hull. */
function boundaryStart(boundary: Field, onHull: ReadonlySet<number>): number {
  let first = 0;
  while (!onHull.has(boundary[2 * first])) first++;
  return first;
}

/** Nodes on the convex hull of the boundary, by Andrew's monotone chain. */
function hullNodes(xy: Field, boundary: Field): Set<number> {
  const nodes = Array.from({ length: boundary.length / 2 }, (_, e) => boundary[2 * e]);
  nodes.sort((a, b) => xy[2 * a] - xy[2 * b] || xy[2 * a + 1] - xy[2 * b + 1]);
  return new Set([...halfHull(xy, nodes), ...halfHull(xy, nodes.reverse())]);
}

/** Hull on the left of a sweep through sorted nodes. */
function halfHull(xy: Field, nodes: readonly number[]): number[] {
  const hull: number[] = [];
  for (const node of nodes) {
    while (hull.length > 1 && turn(xy, hull[hull.length - 2], hull[hull.length - 1], node) < 0) hull.pop();
    hull.push(node);
  }
  return hull;
}

const turn = (xy: Field, a: number, b: number, c: number): number =>
  (xy[2 * b] - xy[2 * a]) * (xy[2 * c + 1] - xy[2 * a + 1]) -
  (xy[2 * b + 1] - xy[2 * a + 1]) * (xy[2 * c] - xy[2 * a]);

const distance = (xy: Field, a: number, b: number): number =>
  Math.hypot(xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]);

const lengthOf = (xy: Field, boundary: Field, edge: number): number =>
  distance(xy, boundary[2 * edge], boundary[2 * edge + 1]);
