import { type Edge, edgesOf } from '../../../section/edges.ts';
import { turnAtJoint } from '../../../section/joints.ts';
import type { Outline, Vertex } from '../../../section/outline.ts';
import type { SymmetryLine } from '../../../section/symmetry.ts';
import { oneEdge, type Row, vertexAt } from './one-edge.ts';

/** A joint that turns more than this, rad, is a corner, unless its neighbours turn half as much: then it is a curve's. */
const cornerTurn = (25 * Math.PI) / 180;
const overNeighbours = 2.2;
/**
 * A chord leaves its arc by turn × length / 8, and an arc of the polygon's area passes its joints by as much; a fifth
 * more is allowed. No curve is expected to turn more from chord to chord than the limit, rad.
 */
const sagitta = 1.2 / 8;
const largestTurn = 1;
/** No mesh edge of a curve leaves it by more than this share of the size. */
const mostOff = 0.03;

export interface Smoothing {
  /** How far any edge may be left, m. */
  readonly within: number;
  /** Edges no longer than this may be chords of a curve, m; the mesh has none longer. */
  readonly size: number;
}

/**
 * The same outline in fewer edges: rows of straight edges become one line or arc of the same area where that leaves them
 * by no more than `within`, or than chords that turn as they do leave their curve. Corners, arcs that are arcs already,
 * and edges on the lines given stay.
 */
export function inFewerEdges(outline: Outline, kept: readonly SymmetryLine[], smoothing: Smoothing): Outline {
  const { vertices } = outline;
  const edges = edgesOf(outline);
  const turns = edges.map((edge, i) =>
    Math.abs(turnAtJoint(edges[(i + edges.length - 1) % edges.length], edge)),
  );
  const fixed = fixedJoints(edges, turns, kept, smoothing);
  for (const joint of fixed) turns[joint] = 0;
  const row: Row = { vertices, within: smoothing.within, rooms: roomsBeside(edges, turns, smoothing) };
  const stops =
    fixed.length > 1 ? fixed : [...new Set([...fixed, ...outermost(outline)])].sort((i, j) => i - j);
  return {
    vertices: stops.flatMap((from, i) => {
      const to = stops[(i + 1) % stops.length];
      return fitted(row, from, to > from ? to : to + vertices.length);
    }),
  };
}

const roomsBeside = (
  edges: readonly Edge[],
  turns: readonly number[],
  { within, size }: Smoothing,
): number[] =>
  edges.map(({ half }, i) => {
    const turn = Math.min(largestTurn, Math.max(turns[i], turns[(i + 1) % turns.length]));
    return 2 * half > size ? within : Math.max(within, Math.min(mostOff * size, sagitta * turn * 2 * half));
  });

function fixedJoints(
  edges: readonly Edge[],
  turns: readonly number[],
  lines: readonly SymmetryLine[],
  { size }: Smoothing,
): number[] {
  const n = edges.length;
  const kept = edges.map((edge) => edge.bulge !== 0 || lines.some((line) => liesOn(edge, line)));
  const near = edges.map(({ half }) => 2 * half <= size);
  return edges.flatMap((_, i) => {
    const [before, after] = [(i + n - 1) % n, (i + 1) % n];
    const beside = Math.max(near[before] ? turns[before] : 0, near[i] ? turns[after] : 0);
    const corner = turns[i] > cornerTurn && turns[i] > overNeighbours * beside;
    return kept[before] || kept[i] || corner ? [i] : [];
  });
}

const liesOn = ({ mx, my, ux, uy }: Edge, { line, at }: SymmetryLine): boolean =>
  line === 'x' ? mx === at && ux === 0 : my === at && uy === 0;

/** Joints farthest left, right, down and up: where to begin on an outline without corners. */
function outermost({ vertices }: Outline): number[] {
  const [xs, ys] = [vertices.map(({ x }) => x), vertices.map(({ y }) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return vertices.flatMap(({ x, y }, i) => (x === left || x === right || y === low || y === high ? [i] : []));
}

/** The edges that stand for those from vertex `from` up to vertex `to`: as few as may be, and of those the nearest. */
function fitted(row: Row, from: number, to: number): Vertex[] {
  const stops = [...stopsBetween(row, from, to), to];
  const ways: Way[] = [{ cost: 0, edges: [] }];
  for (let j = 1; j < stops.length; j++) {
    let best: Way = { cost: Number.POSITIVE_INFINITY, edges: [] };
    for (let i = 0; i < j; i++) {
      const one = ways[i].cost + 1 < best.cost ? oneEdge(row, stops[i], stops[j]) : undefined;
      const cost = one ? ways[i].cost + 1 + one.off : Number.POSITIVE_INFINITY;
      if (one && cost < best.cost) best = { cost, edges: [...ways[i].edges, one.edge] };
    }
    ways.push(best);
  }
  return [...ways[stops.length - 1].edges];
}

/** Edges up to a stop; each costs one, and how far it is off. */
interface Way {
  readonly cost: number;
  readonly edges: readonly Vertex[];
}

/** Where edges have to be divided: at the joint farthest from the chord, and so on in both halves (Douglas, Peucker). */
function stopsBetween(row: Row, from: number, to: number): number[] {
  if (to === from + 1 || oneEdge(row, from, to)) return [from];
  const middle = farthest(row, from, to);
  return [...stopsBetween(row, from, middle), ...stopsBetween(row, middle, to)];
}

/** The joint farthest from the chord. */
function farthest(row: Row, from: number, to: number): number {
  const [start, end] = [vertexAt(row, from), vertexAt(row, to)];
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  let [most, joint] = [-1, from + 1];
  for (let i = from + 1; i < to; i++) {
    const { x, y } = vertexAt(row, i);
    const offset = Math.abs((x - start.x) * dy - (y - start.y) * dx);
    if (offset > most) [most, joint] = [offset, i];
  }
  return joint;
}
