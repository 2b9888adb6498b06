import type { Path, Vertex } from '../../../section/outline.ts';
import { bulgeBetween, heightOf, type Piece, piecesOf } from './pieces.ts';

/** Where the bar is stopped by the groove, or free below it, from left to right. */
export interface Run {
  readonly touching: boolean;
  readonly x0: number;
  readonly x1: number;
}

/** Nearer than this counts as touching, m. */
const touch = 1e-9;

/** Compares a bar with a groove over their common width: runs that touch and runs that are free, in turn. */
export function runsOf(bar: Path, groove: Path): Run[] {
  const [a, b] = [piecesOf(bar), piecesOf(groove)];
  const runs: Run[] = [];
  let [i, j] = [0, 0];
  while (i < a.length && j < b.length) {
    const x0 = Math.max(a[i].x0, b[j].x0);
    const x1 = Math.min(a[i].x1, b[j].x1);
    if (x1 > x0) addRuns(runs, a[i], b[j], x0, x1);
    if (a[i].x1 < b[j].x1) i++;
    else j++;
  }
  return runs;
}

/** Two smooth pieces may cross once on each half of their common width. */
function addRuns(runs: Run[], a: Piece, b: Piece, x0: number, x1: number): void {
  const middle = (x0 + x1) / 2;
  addHalf(runs, a, b, x0, middle);
  addHalf(runs, a, b, middle, x1);
}

function addHalf(runs: Run[], a: Piece, b: Piece, x0: number, x1: number): void {
  const touches = (x: number) => heightOf(a, x) >= heightOf(b, x) - touch;
  const [first, last] = [touches(x0), touches(x1)];
  if (first === last) {
    join(runs, first, x0, x1);
    return;
  }
  let [low, high] = [x0, x1];
  for (let halving = 0; halving < 60 && high - low > 1e-12; halving++) {
    const x = (low + high) / 2;
    if (touches(x) === first) low = x;
    else high = x;
  }
  join(runs, first, x0, low);
  join(runs, last, low, x1);
}

function join(runs: Run[], touching: boolean, x0: number, x1: number): void {
  const last = runs.at(-1);
  if (last && last.touching === touching && x0 - last.x1 < 1e-12) runs[runs.length - 1] = { ...last, x1 };
  else if (x1 > x0) runs.push({ touching, x0, x1 });
}

/** The half section that follows the groove where a run touches and the bar where it is free, down to the axis. */
export function sewn(bar: Path, groove: Path, runs: readonly Run[]): Path {
  const [a, b] = [piecesOf(bar), piecesOf(groove)];
  const vertices: Vertex[] = [];
  for (const { touching, x0, x1 } of runs) addPart(vertices, touching ? b : a, x0, x1);
  const [first, last] = [vertices[0], vertices.at(-1)];
  if (!first || !last) return bar;
  if (first.y > touch) vertices.unshift({ x: first.x, y: 0, bulge: 0 });
  if (last.y > touch) vertices.push({ x: last.x, y: 0, bulge: 0 });
  return { vertices };
}

/** A path between two places along the rolls. */
export function part(path: Path, from: number, to: number): Path {
  const vertices: Vertex[] = [];
  addPart(vertices, piecesOf(path), from, to);
  return { vertices };
}

/** Appends the part of a path between two places; a jump becomes an upright edge. */
function addPart(vertices: Vertex[], pieces: readonly Piece[], from: number, to: number): void {
  for (const piece of pieces) {
    const [x0, x1] = [Math.max(piece.x0, from), Math.min(piece.x1, to)];
    if (x1 - x0 < 1e-12) continue;
    const last = vertices.at(-1);
    const y0 = heightOf(piece, x0);
    const start = { x: x0, y: y0, bulge: bulgeBetween(piece, x0, x1) };
    if (last && Math.hypot(last.x - x0, last.y - y0) < 1e-8)
      vertices[vertices.length - 1] = { ...start, x: last.x, y: last.y };
    else vertices.push(start);
    vertices.push({ x: x1, y: heightOf(piece, x1), bulge: 0 });
  }
}
