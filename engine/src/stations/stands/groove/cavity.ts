import type { Path, Vertex } from '../../../section/outline.ts';
import { part, runsOf } from '../half-section/lower.ts';
import { leftOf, rightOf } from '../half-section/measure.ts';
import { piecesOf } from '../half-section/pieces.ts';
import type { Groove } from './groove.ts';
import type { SetRolls } from './rolls.ts';
import { rounded } from './two-high.ts';

/** What a bar finds between the set rolls: the upper half of the opening, from left to right. */
export interface Cavity {
  readonly half: Path;
  /** Between these places along the rolls the opening is closed by the groove; beyond, metal is a fin. */
  readonly from: number;
  readonly to: number;
  /** Where foot, web and head part: feet of the notch or flanks at the web. Absent in flat and box passes. */
  readonly webFootEnd?: number;
  readonly webHeadEnd?: number;
  /** The mouth between head flank and head roll: its half width, and where it opens and ends along the rolls. */
  readonly mouth?: { readonly half: number; readonly from: number; readonly to: number };
}

export function cavityOf(groove: Groove, rolls: SetRolls): Cavity {
  const ends = webEnds(groove, rolls);
  if (rolls.headFace === undefined && rolls.footFace === undefined)
    return { ...openGroove(rolls.top), ...ends };
  const foot = rolls.footFace ?? leftOf(rolls.top);
  const closing = rolls.head ? withHeadRoll(rolls, rolls.head) : { half: rolls.top };
  return { ...closing, half: from(closing.half, foot), from: foot, to: rightOf(closing.half), ...ends };
}

/** Two rolls meet at their collars; the groove is what lies deeper than the gap. */
function openGroove(top: Path): Cavity {
  const collar = Math.min(top.vertices[0].y, top.vertices[top.vertices.length - 1].y);
  const deeper = top.vertices.filter(({ y }) => y > collar + 1e-6);
  if (deeper.length === 0) return { half: top, from: leftOf(top), to: rightOf(top) };
  return { half: top, from: deeper[0].x, to: deeper[deeper.length - 1].x };
}

/** The head roll's sides close the opening beyond the head flanks. */
function withHeadRoll({ top, rail }: SetRolls, head: Path): Pick<Cavity, 'half' | 'mouth'> {
  const n = head.vertices.length;
  if (n < 5) return { half: upTo(top, head.vertices[0].x) };
  const side = fromMouth(head);
  const { x: end, y: half } = side.vertices[0];
  if (rail) return { half: cornered(top, side, rail.cornerRadius) };
  // Screwed together far enough, flank and side cross beyond the mouth; then the opening follows the lower of them.
  const crossed = runsOf(side, top)[0];
  const x = crossed?.touching ? crossed.x1 : end;
  const vertices = [...upTo(top, x).vertices, ...from(side, x).vertices];
  return { half: { vertices }, mouth: { half, from: lastBelow(top, half), to: x } };
}

/** Where a path last rises through a half height. */
function lastBelow(path: Path, y: number): number {
  const piece = piecesOf(path).findLast(({ x0, x1, y0, slope }) => y0 < y && y0 + slope * (x1 - x0) >= y);
  return piece ? piece.x0 + (y - piece.y0) / piece.slope : rightOf(path);
}

/** Upper half of a head roll from the end of its side at the mouth to the crown, left to right. */
function fromMouth({ vertices }: Path): Path {
  const n = vertices.length;
  const crown = vertices.findIndex(({ y }) => Math.abs(y) < 1e-9);
  const upper = vertices.slice(crown, n - 2);
  return {
    vertices: upper
      .map(({ x, y }, i) => ({ x, y: Math.abs(y) < 1e-9 ? 0 : y, bulge: i > 0 ? -upper[i - 1].bulge : 0 }))
      .reverse(),
  };
}

/** A finisher's lower head corner takes the radius that the metal finds between flank and side. */
function cornered(top: Path, side: Path, radius: number): Path {
  const flank = top.vertices.slice(-2);
  const corner = crossing(flank[0], flank[1], side.vertices[0], side.vertices[1]);
  const rounding = rounded([
    [flank[0].x, flank[0].y, 0],
    [corner.x, corner.y, radius],
    [side.vertices[1].x, side.vertices[1].y, 0],
  ]).vertices;
  return { vertices: [...top.vertices.slice(0, -2), ...rounding.slice(0, -1), ...side.vertices.slice(1)] };
}

function crossing(a: Vertex, b: Vertex, c: Vertex, d: Vertex) {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const t = ((c.x - a.x) * vy - (c.y - a.y) * vx) / (ux * vy - uy * vx);
  return { x: a.x + t * ux, y: a.y + t * uy };
}

/** The part of a path up to a place along the rolls. */
const upTo = (path: Path, x: number): Path => part(path, Number.NEGATIVE_INFINITY, x);

const from = (path: Path, x: number): Path => part(path, x, Number.POSITIVE_INFINITY);

function webEnds(groove: Groove, { rail, top }: SetRolls): { webFootEnd?: number; webHeadEnd?: number } {
  if (rail) return { webFootEnd: rail.webFootEnd, webHeadEnd: rail.webHeadEnd };
  if (groove.family === 'former' || groove.family === 'universal') {
    return { webFootEnd: groove.webFootEnd, webHeadEnd: groove.webHeadEnd };
  }
  if (groove.family !== 'free') return {};
  return endsOfNotch(top);
}

/** Where a free groove has a notch: the stretch of its middle that stands less than 5 mm above its lowest point. */
function endsOfNotch({ vertices }: Path): { webFootEnd?: number; webHeadEnd?: number } {
  const inner = vertices.slice(1, -1);
  const lowest = Math.min(...inner.slice(1, -1).map(({ y }) => y));
  const low = inner.filter(({ y }) => y < lowest + 0.005);
  const deepest = Math.max(...inner.map(({ y }) => y));
  if (low.length < 2 || deepest - lowest < 0.01) return {};
  return { webFootEnd: low[0].x, webHeadEnd: low[low.length - 1].x };
}
