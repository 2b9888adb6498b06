import { segmentMoments } from '../../../section/circular-segment.ts';
import { edgeBetween, edgesOf, nearestShare, pointAt } from '../../../section/edges.ts';
import { turnAtJoint } from '../../../section/joints.ts';
import type { Outline, Vertex } from '../../../section/outline.ts';
import type { Symmetry } from '../quad-mesh.ts';

/** A joint that turns more than this, and more than its neighbours, is a corner of the section, rad. */
const cornerTurn = (25 * Math.PI) / 180;
/** How far a fitted edge may leave chords, as a share of their length: a mesh edge leaves its curve by as much … */
const chordError = 0.06;
/** … and at radii too small for the mesh. */
const tinyChordError = 0.12;
/** Bulge of the longest arc that is fitted at once: a right angle. */
const largestBulge = 0.42;

export interface Smoothing {
  /** How far long edges may be left, m. */
  readonly within: number;
  /** Edges no longer than this may be chords of a curve, m; the mesh has none longer. */
  readonly size: number;
  /** Edges no longer than this may be all that is left of a small radius, m; the mesh has none shorter. */
  readonly smallest: number;
}

/**
 * The same outline in fewer edges: rows of straight edges become one line or arc of the same area where that leaves them
 * by no more than `within`, or than a mesh edge of their own length leaves its curve. Corners, arcs that are arcs
 * already, and edges on lines of symmetry stay. A section that is its own mirror image stays one.
 */
export function smoothOutline(outline: Outline, symmetry: Symmetry, smoothing: Smoothing): Outline {
  const row: Row = { vertices: outline.vertices, ...smoothing };
  const fixed = fixedJoints(outline, symmetry);
  const stops =
    fixed.length > 1 ? fixed : [...new Set([...fixed, ...outermost(outline)])].sort((i, j) => i - j);
  return {
    vertices: stops.flatMap((from, i) => {
      const to = stops[(i + 1) % stops.length];
      return fitted(row, from, to > from ? to : to + outline.vertices.length);
    }),
  };
}

interface Row extends Smoothing {
  readonly vertices: Outline['vertices'];
}

const vertexAt = ({ vertices }: Row, i: number): Vertex => vertices[i % vertices.length];

function fixedJoints(outline: Outline, symmetry: Symmetry): number[] {
  const edges = edgesOf(outline);
  const n = edges.length;
  const turns = edges.map((edge, i) => Math.abs(turnAtJoint(edges[(i + n - 1) % n], edge)));
  const kept = edges.map((edge) => edge.bulge !== 0 || liesOn(edge, symmetry));
  return edges.flatMap((_, i) => {
    const [before, after] = [(i + n - 1) % n, (i + 1) % n];
    const corner = turns[i] > cornerTurn && turns[i] > 1.5 * Math.max(turns[before], turns[after]);
    return kept[before] || kept[i] || corner ? [i] : [];
  });
}

const liesOn = ({ mx, my, ux, uy }: ReturnType<typeof edgeBetween>, { x, y }: Symmetry): boolean =>
  (mx === x && ux === 0) || (my === y && uy === 0);

/** Joints farthest left, right, down and up: where to begin on an outline without corners. */
function outermost({ vertices }: Outline): number[] {
  const [xs, ys] = [vertices.map(({ x }) => x), vertices.map(({ y }) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return vertices.flatMap(({ x, y }, i) => (x === left || x === right || y === low || y === high ? [i] : []));
}

/** The edges that stand for those from vertex `from` up to vertex `to`: one if it fits, else those of two halves. */
function fitted(row: Row, from: number, to: number): Vertex[] {
  const [start, end] = [vertexAt(row, from), vertexAt(row, to)];
  if (to === from + 1) return [start];
  const one = {
    ...start,
    bulge: bulgeOf(areaBeyondChord(row, from, to), Math.hypot(end.x - start.x, end.y - start.y)),
  };
  if (Math.abs(one.bulge) < largestBulge && fits(row, one, from, to)) return [one];
  const stops = [from, ...farthest(row, from, to), to];
  return stops.slice(1).flatMap((stop, i) => fitted(row, stops[i], stop));
}

/** Area between the edges and the chord of their ends, m²; positive on the outer side, where bulges are. */
function areaBeyondChord(row: Row, from: number, to: number): number {
  const origin = vertexAt(row, from);
  let twice = 0;
  for (let i = from + 1; i + 1 <= to; i++) {
    const [a, b] = [vertexAt(row, i), vertexAt(row, i + 1)];
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  }
  return twice / 2;
}

/** Bulge of the arc over a chord with this area between them; Newton from the flat arc's 4/3 half² bulge. */
function bulgeOf(area: number, chord: number): number {
  const unit = (4 * area) / (chord * chord);
  let bulge = 0.75 * unit;
  if (!(Math.abs(bulge) < 2 * largestBulge)) return Number.POSITIVE_INFINITY;
  for (let step = 0; step < 6; step++) {
    bulge -= (segmentMoments(1, bulge).area - unit) / (4 / 3 + 4 * bulge * bulge);
  }
  return bulge;
}

/** Whether an edge passes near enough to every joint and to every middle of the edges that it stands for. */
function fits(row: Row, one: Vertex, from: number, to: number): boolean {
  const edge = edgeBetween(one, vertexAt(row, to));
  const distance = (x: number, y: number): number => {
    const near = pointAt(edge, nearestShare(edge, x, y));
    return Math.hypot(near.x - x, near.y - y);
  };
  let before = 0;
  for (let i = from; i < to; i++) {
    const [a, b] = [vertexAt(row, i), vertexAt(row, i + 1)];
    const room = roomBeside(row, Math.hypot(b.x - a.x, b.y - a.y));
    if (distance((a.x + b.x) / 2, (a.y + b.y) / 2) > room) return false;
    if (i > from && distance(a.x, a.y) > Math.min(room, before)) return false;
    before = room;
  }
  return true;
}

/** Long edges are true lines; short ones may be chords. */
function roomBeside({ within, size, smallest }: Row, length: number): number {
  if (length > size) return within;
  return Math.max(within, length * (length > smallest ? chordError : tinyChordError));
}

/** The joint farthest from the chord, or first and last of those equally far: a mirror image is divided alike. */
function farthest(row: Row, from: number, to: number): number[] {
  const [start, end] = [vertexAt(row, from), vertexAt(row, to)];
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  const offsets = Array.from({ length: to - from - 1 }, (_, k) => {
    const { x, y } = vertexAt(row, from + 1 + k);
    return Math.abs((x - start.x) * dy - (y - start.y) * dx);
  });
  const most = Math.max(...offsets) * (1 - 1e-9);
  const [first, last] = [offsets.findIndex((o) => o >= most), offsets.findLastIndex((o) => o >= most)];
  return first === last ? [from + 1 + first] : [from + 1 + first, from + 1 + last];
}
