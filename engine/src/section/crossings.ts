import { contains } from './contains.ts';
import { type Edge, edgesOf, type Point, pointAt, shareAt } from './edges.ts';
import type { Outline } from './outline.ts';

/** The points with nx·x + ny·y = at; (nx, ny) is a unit vector and points to the line's upper side. */
export interface Line {
  readonly nx: number;
  readonly ny: number;
  readonly at: number;
}

/** Signed distance of a point above the line, m. */
export const above = ({ nx, ny, at }: Line, { x, y }: Point): number => nx * x + ny * y - at;

/**
 * Shares of an edge's length where it meets a line, ascending; at most two, exact on arcs: the line's equation in σ
 * is a quadratic for every bulge. A straight edge that lies in the line gives none.
 */
export function sharesOnLine(edge: Edge, line: Line): number[] {
  const { ux, uy, half, bulge } = edge;
  const level = line.nx * edge.mx + line.ny * edge.my - line.at;
  const along = line.nx * ux + line.ny * uy;
  const across = half * bulge * (line.nx * uy - line.ny * ux);
  const roots = quadraticRoots(
    level * bulge * bulge - across,
    half * (1 + bulge * bulge) * along,
    level + across,
  );
  return roots.filter((sigma) => Math.abs(sigma) <= 1).map((sigma) => shareAt(edge, sigma));
}

/** Real roots of a·σ² + b·σ + c, ascending, without cancellation. */
function quadraticRoots(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  if (q === 0) return a === 0 ? [] : [0];
  return a === 0 ? [c / q] : [q / a, c / q].sort((s, t) => s - t);
}

/** Where the upright line x = at (or the level line y = at) runs through material: pairs from, to, ascending, m. */
export function chordsAt(outline: Outline, axis: 'x' | 'y', at: number): [number, number][] {
  const line = axis === 'x' ? { nx: 1, ny: 0, at } : { nx: 0, ny: 1, at };
  const meets = edgesOf(outline).flatMap((edge) =>
    sharesOnLine(edge, line).map((share) => alongLine(edge, share, axis)),
  );
  for (const v of outline.vertices) if (v[axis] === at) meets.push(axis === 'x' ? v.y : v.x);
  meets.sort((p, q) => p - q);
  const chords: [number, number][] = [];
  for (let i = 0; i + 1 < meets.length; i++) {
    const middle = (meets[i] + meets[i + 1]) / 2;
    const inside = axis === 'x' ? contains(outline, at, middle) : contains(outline, middle, at);
    if (inside && meets[i + 1] > meets[i]) chords.push([meets[i], meets[i + 1]]);
  }
  return chords;
}

function alongLine(edge: Edge, share: number, axis: 'x' | 'y'): number {
  const { x, y } = pointAt(edge, share);
  return axis === 'x' ? y : x;
}

const total = (chords: readonly (readonly [number, number])[]): number =>
  chords.reduce((sum, [from, to]) => sum + to - from, 0);

/** Material on the level line at y, m: the width where the section is one piece there, gaps left out; 0 outside. */
export const widthAt = (outline: Outline, y: number): number => total(chordsAt(outline, 'y', y));

/** Material on the upright line at x, m. */
export const heightAt = (outline: Outline, x: number): number => total(chordsAt(outline, 'x', x));

/** Widths at many heights, m: a rail's thickness from foot to crown. */
export const thicknessProfile = (outline: Outline, ys: ArrayLike<number>): Float64Array =>
  Float64Array.from(ys, (y) => widthAt(outline, y));
