import { above, type Line, sharesOnLine } from './crossings.ts';
import { edgeBetween, type Point, partOf } from './edges.ts';
import type { Outline, Vertex } from './outline.ts';

/** Lengths below this share of the section count as touching, m per m. */
const touching = 1e-11;

/** Both sides of the upright line x = at or the level line y = at; arcs stay exact. A side may be empty or in parts. */
export function cutAt(outline: Outline, axis: 'x' | 'y', at: number): { below: Outline[]; above: Outline[] } {
  const line = axis === 'x' ? { nx: 1, ny: 0, at } : { nx: 0, ny: 1, at };
  return { below: partsAbove(outline, turnedOver(line)), above: partsAbove(outline, line) };
}

const turnedOver = ({ nx, ny, at }: Line): Line => ({ nx: 0 - nx, ny: 0 - ny, at: -at });

/**
 * The parts of an outline on the upper side of a line. Edges are split where they meet the line; the runs above it
 * are joined along it: with material on the left, every run that comes down onto the line goes on to the next run
 * that leaves it. Where the outline only touches the line from above, the part goes through that point.
 */
export function partsAbove(outline: Outline, line: Line): Outline[] {
  const { pieces, whole } = splitAt(outline, line);
  if (whole) return pieces[0].height > 0 ? [outline] : [];
  return joined(runsAbove(pieces), line);
}

/** A part of an edge, from its vertex to the next piece's, with the height of its middle above the line. */
interface Piece extends Vertex {
  readonly height: number;
}

function splitAt(outline: Outline, line: Line): { pieces: Piece[]; whole: boolean } {
  const near = touching * Math.max(...outline.vertices.map(({ x, y }) => Math.abs(x) + Math.abs(y)));
  const settle = (point: Vertex): Vertex => (Math.abs(above(line, point)) < near ? onto(line, point) : point);
  const vertices = outline.vertices.map(settle);
  const pieces: Piece[] = [];
  let whole = true;
  for (let i = 0; i < vertices.length; i++) {
    const edge = edgeBetween(vertices[i], vertices[(i + 1) % vertices.length]);
    const tiny = near / (2 * edge.half + near);
    const inner = sharesOnLine(edge, line).filter((share) => share > tiny && share < 1 - tiny);
    const cuts = [0, ...inner, 1];
    for (let k = 0; k + 1 < cuts.length; k++) {
      const start = k === 0 ? vertices[i] : onto(line, partOf(edge, cuts[k], 1));
      const height = above(line, partOf(edge, (cuts[k] + cuts[k + 1]) / 2, 1));
      pieces.push({
        ...start,
        bulge: partOf(edge, cuts[k], cuts[k + 1]).bulge,
        height: Math.abs(height) < near / 4 ? 0 : height,
      });
    }
  }
  const side = Math.sign(pieces[0].height);
  for (const piece of pieces) if (Math.sign(piece.height) !== side || side === 0) whole = false;
  return { pieces, whole };
}

const onto = (line: Line, point: Vertex): Vertex => {
  const height = above(line, point);
  return { x: point.x - line.nx * height, y: point.y - line.ny * height, bulge: point.bulge };
};

/** An unbroken row of pieces above the line, with the point on the line where it ends. */
interface Run {
  readonly vertices: Vertex[];
  readonly end: Point;
}

function runsAbove(pieces: readonly Piece[]): Run[] {
  const n = pieces.length;
  const first = pieces.findIndex((piece, i) => piece.height > 0 && pieces[(i + n - 1) % n].height <= 0);
  if (first < 0) return [];
  const runs: Run[] = [];
  let vertices: Vertex[] = [];
  for (let k = 0; k < n; k++) {
    const { x, y, bulge, height } = pieces[(first + k) % n];
    const next = pieces[(first + k + 1) % n];
    if (height <= 0) continue;
    vertices.push({ x, y, bulge });
    if (next.height > 0 && k + 1 < n) continue;
    runs.push({ vertices, end: next });
    vertices = [];
  }
  return runs;
}

/** Closes the runs along the line, in the direction that keeps the upper side on the left. */
function joined(runs: readonly Run[], line: Line): Outline[] {
  const along = ({ x, y }: Point): number => line.ny * x - line.nx * y;
  const waiting = [...runs].sort((p, q) => along(p.vertices[0]) - along(q.vertices[0]));
  const parts: Outline[] = [];
  while (waiting.length > 0) {
    const start = waiting[waiting.length - 1];
    const vertices: Vertex[] = [];
    let run = start;
    do {
      vertices.push(...run.vertices, { x: run.end.x, y: run.end.y, bulge: 0 });
      const end = along(run.end);
      const next = waiting.find((other) => along(other.vertices[0]) >= end) ?? start;
      if (next === start) break;
      waiting.splice(waiting.indexOf(next), 1);
      run = next;
    } while (run !== start);
    waiting.splice(waiting.indexOf(start), 1);
    parts.push({ vertices: withoutRepeats(vertices) });
  }
  return parts;
}

/** Where a run ends exactly where the next one starts, one vertex is enough. */
const withoutRepeats = (vertices: readonly Vertex[]): Vertex[] =>
  vertices.filter(({ x, y, bulge }, i) => {
    const next = vertices[(i + 1) % vertices.length];
    return bulge !== 0 || x !== next.x || y !== next.y;
  });
