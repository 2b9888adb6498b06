import { fail, ok, type Result } from '../../../outcome/result.ts';
import { edgeBetween, edgesOf, partOf, pointAt, tangentAt } from '../../../section/edges.ts';
import type { Outline, Path, Vertex } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';

/**
 * A pass works on halves: the upper half of a section that is alike above and below the pass line, as a path from its
 * left end on the axis to its right end, never running back in x. Lower half and closed outline follow by mirroring.
 */
export function upperHalf(outline: Outline): Result<Path> {
  const { area, bounds, centroid, ixy, ix, iy } = sectionProperties(outline);
  const size = Math.max(bounds.top - bounds.bottom, bounds.right - bounds.left);
  const off = Math.max(Math.abs(centroid.y), Math.abs(bounds.top + bounds.bottom)) / size;
  if (!(area > 0) || !(off < 1e-4) || Math.abs(ixy) > 1e-3 * (ix + iy)) {
    return fail({
      model: 'pass',
      reason: 'the section is not alike above and below the pass line',
      residual: off,
    });
  }
  const path = fromLeft(cutOnAxis(outline));
  return ok(runsForward(path) ? path : shadow(path));
}

/** Mirrored and closed, counter-clockwise. */
export function closed({ vertices }: Path): Outline {
  const n = vertices.length - 1;
  const lower = vertices.slice(0, n).map(({ x, y, bulge }) => ({ x, y: -y, bulge: -bulge }));
  const upper = vertices.slice(1).map(({ x, y }, i) => ({ x, y, bulge: -vertices[i].bulge }));
  return { vertices: [...lower, ...upper.reverse()] };
}

/** The outline's vertices above the axis, right to left, with its crossings of the axis as ends. */
function cutOnAxis(outline: Outline): Vertex[] {
  const edges = edgesOf(outline);
  const n = edges.length;
  const { vertices } = outline;
  const rising = vertices.flatMap(({ y }, i) => (y <= 0 && vertices[(i + 1) % n].y > 0 ? [i] : []));
  const first = rising.reduce((best, i) => (vertices[i].x > vertices[best].x ? i : best));
  const chain: Vertex[] = [];
  for (let k = 0; k < n; k++) {
    const i = (first + k) % n;
    const [from, to] = [vertices[i], vertices[(i + 1) % n]];
    if (from.y > 0) chain.push(from);
    if (from.y > 0 === to.y > 0) continue;
    const share = shareOnAxis(outline, i);
    if (to.y > 0) chain.push(partOf(edges[i], share, 1));
    else {
      chain[chain.length - 1] = partOf(edges[i], 0, share);
      chain.push({ ...pointAt(edges[i], share), bulge: 0 });
      break;
    }
  }
  const [start, end] = [chain[0], chain[chain.length - 1]];
  chain[0] = { ...start, y: 0 };
  chain[chain.length - 1] = { ...end, y: 0 };
  return chain;
}

/** Where an edge between two vertices on either side of the axis meets it. */
function shareOnAxis({ vertices }: Outline, i: number): number {
  const edge = edgeBetween(vertices[i], vertices[(i + 1) % vertices.length]);
  const up = vertices[i].y <= 0;
  let [low, high] = [0, 1];
  for (let k = 0; k < 50; k++) {
    const share = (low + high) / 2;
    if (pointAt(edge, share).y > 0 === up) high = share;
    else low = share;
  }
  return (low + high) / 2;
}

/** The same chain walked the other way. */
function fromLeft(chain: readonly Vertex[]): Path {
  const n = chain.length;
  return {
    vertices: chain.map((_, k) => {
      const { x, y } = chain[n - 1 - k];
      return { x, y, bulge: k < n - 1 ? -chain[n - 2 - k].bulge : 0 };
    }),
  };
}

function runsForward({ vertices }: Path): boolean {
  for (let i = 0; i + 1 < vertices.length; i++) {
    const [from, to] = [vertices[i], vertices[i + 1]];
    if (to.x < from.x - 1e-9) return false;
    if (from.bulge === 0) continue;
    const edge = edgeBetween(from, to);
    if (tangentAt(edge, 0).x < -1e-6 || tangentAt(edge, 1).x < -1e-6) return false;
  }
  return true;
}

const columns = 400;

/** A half section that overhangs, seen from above: highest point over each of many narrow columns. */
function shadow(path: Path): Path {
  const points = chords(path, 12);
  const left = Math.min(...points.map(({ x }) => x));
  const right = Math.max(...points.map(({ x }) => x));
  const height = new Float64Array(columns + 1);
  for (let i = 0; i + 1 < points.length; i++)
    raise(height, points[i], points[i + 1], left, (right - left) / columns);
  const over = Array.from(height, (y, k) => ({ x: left + ((right - left) * k) / columns, y, bulge: 0 }));
  return { vertices: [{ x: left, y: 0, bulge: 0 }, ...over, { x: right, y: 0, bulge: 0 }] };
}

function raise(height: Float64Array, a: Vertex, b: Vertex, left: number, step: number): void {
  const [from, to] = a.x < b.x ? [a, b] : [b, a];
  const first = Math.ceil((from.x - left) / step - 1e-9);
  const last = Math.floor((to.x - left) / step + 1e-9);
  for (let k = Math.max(0, first); k <= Math.min(height.length - 1, last); k++) {
    const share = to.x > from.x ? (left + k * step - from.x) / (to.x - from.x) : 1;
    height[k] = Math.max(height[k], from.y + share * (to.y - from.y));
  }
}

/** The path as points, every arc in `parts` chords. */
export function chords({ vertices }: Path, parts: number): Vertex[] {
  const points: Vertex[] = [];
  for (let i = 0; i + 1 < vertices.length; i++) {
    const edge = edgeBetween(vertices[i], vertices[i + 1]);
    const n = edge.bulge === 0 ? 1 : parts;
    for (let k = 0; k < n; k++) points.push({ ...pointAt(edge, k / n), bulge: 0 });
  }
  points.push(vertices[vertices.length - 1]);
  return points;
}
