import type { Field, Indices } from '../../../outcome/field.ts';
import { type QuadMesh, skin } from '../quad-mesh.ts';
import { endOf } from './across.ts';

/**
 * Where a point sits in a mesh: four nodes with their weights (sum 1, two of them 0 on the skin), and the place that
 * these stand for. One seat is written anew for every point.
 */
export interface Seat {
  element: number;
  readonly nodes: Int32Array;
  readonly weights: Float64Array;
}

export const emptySeat = (): Seat => ({ element: 0, nodes: new Int32Array(4), weights: new Float64Array(4) });

/** A nodal field of pairs at the seat: 0 its first, 1 its second component. */
export function atSeat({ nodes, weights }: Seat, pairs: Field, component: 0 | 1): number {
  let sum = 0;
  for (let a = 0; a < 4; a++) if (weights[a] !== 0) sum += weights[a] * pairs[2 * nodes[a] + component];
  return sum;
}

/** A nodal field of single values at the seat. */
export function oneAtSeat({ nodes, weights }: Seat, values: Field): number {
  let sum = 0;
  for (let a = 0; a < 4; a++) if (weights[a] !== 0) sum += weights[a] * values[nodes[a]];
  return sum;
}

/** A mesh at one of its moments: node places xy. */
export interface Standing {
  readonly mesh: QuadMesh;
  readonly across: Indices;
  readonly xy: Field;
}

/**
 * The element that holds a point, looked for from `near` on, neighbour by neighbour through the edge that the point lies
 * farthest beyond; where that way ends at the boundary, among all elements. -1 outside the mesh.
 */
export function elementAt(
  { mesh: { quads }, across, xy }: Standing,
  x: number,
  y: number,
  near: number,
): number {
  let element = near;
  for (let steps = 0; steps < mostSteps; steps++) {
    const edge = edgeBeyond(quads, xy, element, x, y);
    if (edge < 0) return element;
    element = across[edge];
    if (element < 0) break;
  }
  for (let k = 0; 4 * k < quads.length; k++) if (edgeBeyond(quads, xy, k, x, y) < 0) return k;
  return -1;
}

const mostSteps = 64;

/** Points this share of an edge's length beyond it count as inside: round-off on edges and lines of symmetry. */
const roundOff = 1e-10;

/** The edge of an element that a point lies farthest beyond, by its place in the list of corners; -1 inside. */
function edgeBeyond(quads: Indices, xy: Field, element: number, x: number, y: number): number {
  let [worst, least] = [-1, -roundOff];
  for (let at = 4 * element; at < 4 * element + 4; at++) {
    const [a, b] = [2 * quads[at], 2 * quads[endOf(at)]];
    const [dx, dy] = [xy[b] - xy[a], xy[b + 1] - xy[a + 1]];
    const inside = (dx * (y - xy[a + 1]) - dy * (x - xy[a])) / (dx * dx + dy * dy);
    if (inside < least) [worst, least] = [at, inside];
  }
  return worst;
}

/** Seats a point in an element that holds it: the bilinear map turned back by Newton's method, which converges inside. */
export function sitInside(
  { mesh: { quads }, xy }: Standing,
  element: number,
  x: number,
  y: number,
  seat: Seat,
): void {
  for (let corner = 0; corner < 4; corner++) seat.nodes[corner] = quads[4 * element + corner];
  seat.element = element;
  let [s, t] = [0.5, 0.5];
  for (let turn = 0; turn < 12; turn++) {
    bilinear(s, t, seat.weights);
    const [px, py] = [x - atSeat(seat, xy, 0), y - atSeat(seat, xy, 1)];
    const [sx, sy] = [alongS(seat, xy, t, 0), alongS(seat, xy, t, 1)];
    const [tx, ty] = [alongT(seat, xy, s, 0), alongT(seat, xy, s, 1)];
    const size = sx * ty - sy * tx;
    if (!(size > 0)) return;
    const [ds, dt] = [(px * ty - py * tx) / size, (sx * py - sy * px) / size];
    [s, t] = [within(s + ds), within(t + dt)];
    if (Math.abs(ds) + Math.abs(dt) < 1e-13) break;
  }
  bilinear(s, t, seat.weights);
}

/** A whisker of extrapolation keeps points on edges exact; more would let a poor element throw them out. */
const within = (share: number): number => Math.min(1 + 1e-6, Math.max(-1e-6, share));

function bilinear(s: number, t: number, weights: Float64Array): void {
  weights[0] = (1 - s) * (1 - t);
  weights[1] = s * (1 - t);
  weights[2] = s * t;
  weights[3] = (1 - s) * t;
}

const alongS = ({ nodes: [a, b, c, d] }: Seat, xy: Field, t: number, i: 0 | 1): number =>
  (1 - t) * (xy[2 * b + i] - xy[2 * a + i]) + t * (xy[2 * c + i] - xy[2 * d + i]);

const alongT = ({ nodes: [a, b, c, d] }: Seat, xy: Field, s: number, i: 0 | 1): number =>
  (1 - s) * (xy[2 * d + i] - xy[2 * a + i]) + s * (xy[2 * c + i] - xy[2 * b + i]);

/** Seats a point at its nearest place on the skin. */
export function sitOnSkin({ mesh: { loop, lies }, xy }: Standing, x: number, y: number, seat: Seat): void {
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < loop.length; i++) {
    if (lies[i] !== skin) continue;
    const [a, b] = [loop[i], loop[(i + 1) % loop.length]];
    const [dx, dy] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
    const [px, py] = [x - xy[2 * a], y - xy[2 * a + 1]];
    const share = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
    const squared = (px - share * dx) ** 2 + (py - share * dy) ** 2;
    if (squared >= nearest) continue;
    nearest = squared;
    seat.nodes[0] = a;
    seat.nodes[1] = b;
    seat.weights[0] = 1 - share;
    seat.weights[1] = share;
  }
  seat.weights[2] = seat.weights[3] = 0;
}
