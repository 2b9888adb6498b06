import type { Outline, Path, Vertex } from './outline.ts';

/**
 * One edge of an outline seen from the middle of its chord: u runs along the chord, w to its right.
 * A point at σ in [-1, 1] is exact and stable for every bulge b, zero included:
 *
 *              a·(1 + b²)·σ              a·b·(1 − σ²)              w ▲ ╭──── arc, b > 0
 *        u  =  ────────────,        w  =  ────────────              ──┼────┼────► u
 *               1 + b²σ²                   1 + b²σ²               σ=-1     σ=+1
 *
 * a is half the chord. σ is tan(φ/2)/b where φ is the angle from the middle of the arc.
 */
export interface Edge {
  /** Middle of the chord, m. */
  readonly mx: number;
  readonly my: number;
  /** Unit vector along the chord. */
  readonly ux: number;
  readonly uy: number;
  /** Half the chord, m. */
  readonly half: number;
  readonly bulge: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** An arc flatter than this leaves its chord by less than round-off and is a line. */
const straightBelow = 1e-12;

/** The edge from one vertex to the next; the bulge is the first one's. */
export function edgeBetween(from: Vertex, to: Point): Edge {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = length > 0 ? [dx / length, dy / length] : [1, 0];
  return {
    mx: (from.x + to.x) / 2,
    my: (from.y + to.y) / 2,
    ux,
    uy,
    half: length / 2,
    bulge: Math.abs(from.bulge) < straightBelow ? 0 : from.bulge,
  };
}

/** Edge i runs from vertex i to vertex i + 1, the last one back to vertex 0. */
export const edgesOf = ({ vertices }: Outline): Edge[] =>
  vertices.map((vertex, i) => edgeBetween(vertex, vertices[(i + 1) % vertices.length]));

/** Edges of an open chain: one fewer than its vertices. */
export const edgesOfPath = ({ vertices }: Path): Edge[] =>
  vertices.slice(0, -1).map((vertex, i) => edgeBetween(vertex, vertices[i + 1]));

/** Angle that the tangent turns through, rad, positive to the left. */
export const turning = ({ bulge }: Edge): number => 4 * Math.atan(bulge);

/** Radius with the sign of the turning, m; infinite for a line. */
export const signedRadius = ({ half, bulge }: Edge): number => (half * (1 + bulge * bulge)) / (2 * bulge);

export const radius = (edge: Edge): number => Math.abs(signedRadius(edge));

/** Centre of the arc; at infinity (not finite) for a line. */
export function centre(edge: Edge): Point {
  const left = (edge.half * (1 - edge.bulge * edge.bulge)) / (2 * edge.bulge);
  return { x: edge.mx - edge.uy * left, y: edge.my + edge.ux * left };
}

/** Length along the edge, m. */
export function edgeLength({ half, bulge }: Edge): number {
  const halfAngle = 2 * Math.atan(bulge);
  return 2 * half * (bulge === 0 ? 1 : halfAngle / Math.sin(halfAngle));
}

/** The point at σ in [-1, 1]. */
export function pointAtSigma({ mx, my, ux, uy, half, bulge }: Edge, sigma: number): Point {
  const below = 1 + bulge * bulge * sigma * sigma;
  const u = (half * (1 + bulge * bulge) * sigma) / below;
  const w = (half * bulge * (1 - sigma * sigma)) / below;
  return { x: mx + ux * u + uy * w, y: my + uy * u - ux * w };
}

/** σ of a share of the length, 0 at the start and 1 at the end. */
export const sigmaAt = ({ bulge }: Edge, share: number): number =>
  bulge === 0 ? 2 * share - 1 : Math.tan(2 * Math.atan(bulge) * (share - 0.5)) / bulge;

/** Share of the length at σ. */
export const shareAt = ({ bulge }: Edge, sigma: number): number =>
  bulge === 0 ? (1 + sigma) / 2 : 0.5 + Math.atan(bulge * sigma) / (2 * Math.atan(bulge));

/** The point at a share of the edge's length, 0 to 1. */
export const pointAt = (edge: Edge, share: number): Point => pointAtSigma(edge, sigmaAt(edge, share));

/** Direction of travel at a share of the length, rad. */
export const directionAt = (edge: Edge, share: number): number =>
  Math.atan2(edge.uy, edge.ux) + turning(edge) * (share - 0.5);

/** Unit tangent at a share of the length; the material lies to its left. */
export function tangentAt(edge: Edge, share: number): Point {
  const angle = turning(edge) * (share - 0.5);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { x: edge.ux * c - edge.uy * s, y: edge.uy * c + edge.ux * s };
}

/** Share of the length at which the edge comes nearest to a point. */
export function nearestShare(edge: Edge, x: number, y: number): number {
  const { mx, my, ux, uy, half, bulge } = edge;
  const [px, py] = [x - mx, y - my];
  const [u, w] = [px * ux + py * uy, px * uy - py * ux];
  if (bulge === 0) return Math.min(1, Math.max(0, 0.5 + u / (2 * half)));
  const toCentre = (half * (1 - bulge * bulge)) / (2 * Math.abs(bulge));
  const angle = Math.atan2(u, Math.sign(bulge) * w + toCentre);
  const share = 0.5 + angle / Math.abs(turning(edge));
  if (share >= 0 && share <= 1) return share;
  return u > 0 ? 1 : 0;
}

/** The part of an edge between two shares of its length, as the vertex it starts from. */
export function partOf(edge: Edge, from: number, to: number): Vertex {
  return { ...pointAt(edge, from), bulge: Math.tan(Math.atan(edge.bulge) * (to - from)) };
}

export interface Nearest extends Point {
  readonly edge: number;
  readonly share: number;
  readonly distance: number;
}

/** The nearest point of an outline's edges to a point. */
export function nearestOn(edges: readonly Edge[], x: number, y: number): Nearest {
  let nearest: Nearest = { edge: -1, share: 0, distance: Number.POSITIVE_INFINITY, x, y };
  for (let i = 0; i < edges.length; i++) {
    const share = nearestShare(edges[i], x, y);
    const point = pointAt(edges[i], share);
    const distance = Math.hypot(point.x - x, point.y - y);
    if (distance < nearest.distance) nearest = { edge: i, share, distance, x: point.x, y: point.y };
  }
  return nearest;
}
