import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { Outline, Path, Vertex } from '../../../section/outline.ts';
import { scaled } from '../../../section/transform.ts';
import { upperHalf } from '../half-section/half-section.ts';
import { drawn } from '../half-section/stretch.ts';
import type { FinisherGroove } from './groove.ts';
import { rounded } from './two-high.ts';
import { collarReach } from './universal.ts';

/** Nose of the head roll between its groove and its collar, m. */
const noseRadius = 0.0015;

/** The hot rail as it lies in the stand, foot back at x = 0, and the joints of its upper half that a finisher needs. */
export interface HotRail {
  readonly half: Path;
  /** Vertex at which the toe's edge begins, foot flank begins and ends, head flank begins, side of the head begins. */
  readonly toe: number;
  readonly flank: number;
  readonly headFlank: number;
  readonly side: number;
  /** Radii at the foot's lower and upper edge and at the head's lower corner, m. */
  readonly baseRadius: number;
  readonly toeRadius: number;
  readonly cornerRadius: number;
  /** Where the flanks, drawn on, would meet the web's thinnest part. */
  readonly webFootEnd: number;
  readonly webHeadEnd: number;
}

/** From the cold rail standing on its foot (x across, y up) to the hot one lying in the pass. */
export function hotRail(cold: Outline, hotFactor: number): Result<HotRail> {
  const lying = upperHalf(laid(scaled(cold, hotFactor)));
  if (!lying.ok) return lying;
  const { vertices } = lying.value;
  const middle = vertices[vertices.length - 1].x / 2;
  const toe = highest(vertices, (x) => x < middle);
  const flank = vertices[toe + 1].bulge === 0 ? toe + 1 : toe + 2;
  const side = sideOfHead(vertices, middle);
  const headFlank = side - (vertices[side - 1]?.bulge === 0 ? 1 : 2);
  if (!(toe > 0 && flank < headFlank && headFlank < side)) {
    return fail({ model: 'groove', reason: 'the profile has no flanks between which a roll could fit' });
  }
  const web = Math.min(...vertices.slice(flank, headFlank).map(({ y }) => y));
  const foot = lastFlank(vertices, flank, headFlank);
  return ok({
    half: lying.value,
    toe,
    flank,
    headFlank,
    side,
    baseRadius: radiusOf(vertices, toe - 1),
    toeRadius: radiusOf(vertices, toe + 1),
    cornerRadius: radiusOf(vertices, side - 1),
    webFootEnd: vertices[foot].x + slopeAt(vertices, foot) * (web - vertices[foot].y),
    webHeadEnd: vertices[headFlank].x + slopeAt(vertices, headFlank) * (web - vertices[headFlank].y),
  });
}

/** The straight part of the foot's upper face nearest to the web. */
function lastFlank(vertices: readonly Vertex[], flank: number, headFlank: number): number {
  const middle = (vertices[flank].x + vertices[headFlank].x) / 2;
  let last = flank;
  for (let i = flank; vertices[i + 1].x < middle; i++) {
    const [run, drop] = [vertices[i + 1].x - vertices[i].x, vertices[i].y - vertices[i + 1].y];
    if (vertices[i].bulge === 0 && drop > run / 5) last = i;
  }
  return last;
}

/** Radius of the arc that begins at a vertex; 0 for a line. */
function radiusOf(vertices: readonly Vertex[], i: number): number {
  const { bulge } = vertices[i];
  if (bulge === 0) return 0;
  const half = Math.hypot(vertices[i + 1].x - vertices[i].x, vertices[i + 1].y - vertices[i].y) / 2;
  return (half * (1 + bulge * bulge)) / (2 * Math.abs(bulge));
}

/** Horizontal roll: the rail from foot flank to head flank, both drawn on to the roll's edge. */
export function finisherProfile({ rollEdge }: FinisherGroove, { half, flank, headFlank }: HotRail): Path {
  const part = half.vertices.slice(flank, headFlank + 1);
  const first = drawnOn(part[1], part[0], rollEdge);
  const last = drawnOn(half.vertices[headFlank], half.vertices[headFlank + 1], rollEdge);
  return { vertices: [first, ...part.slice(1), last] };
}

/** Head roll: crown and sides of the rail, then a collar along the head flank; from below to above. */
export function finisherHeadRoll(groove: FinisherGroove, rail: HotRail, face: number): Path {
  const { half, headFlank, side } = rail;
  const corner = crossing(half.vertices, headFlank, side);
  const out = face - half.vertices[half.vertices.length - 1].x;
  const wider = 1 + groove.headAllowance / corner.y;
  const crown = drawn({ vertices: half.vertices.slice(side) }, (x, y) => [x + out, y * wider]).vertices;
  const slope = slopeAt(half.vertices, headFlank);
  const mouth = meeting(crown[1], crown[0], { x: corner.x + groove.collarGap, y: corner.y, slope });
  const nose = rounded([
    [mouth.x + collarReach * slope, mouth.y + collarReach, 0],
    [mouth.x, mouth.y, noseRadius],
    [crown[1].x, crown[1].y, 0],
  ]).vertices;
  return throughCrown([...nose.slice(0, -1), ...crown.slice(1)]);
}

/** The upper part runs from the collar to the crown; the roll's path from below to above needs both parts. */
function throughCrown(upper: readonly Vertex[]): Path {
  const n = upper.length;
  const below = upper.map(({ x, y, bulge }) => ({ x, y: -y, bulge: -bulge }));
  const above = upper
    .slice(0, n - 1)
    .map(({ x, y }, k) => ({ x, y, bulge: k > 0 ? -upper[k - 1].bulge : 0 }));
  return {
    vertices: [...below.slice(0, n - 1), { ...below[n - 1], bulge: -upper[n - 2].bulge }, ...above.reverse()],
  };
}

/** x across becomes y across the gap, and up becomes along the rolls. */
const laid = ({ vertices }: Outline): Outline => ({
  vertices: vertices
    .map((_, i) => {
      const { x, y } = vertices[i];
      return { x: y, y: x, bulge: vertices[(i + vertices.length - 1) % vertices.length].bulge };
    })
    .reverse(),
});

const highest = (vertices: readonly Vertex[], where: (x: number) => boolean): number =>
  vertices.reduce((best, { x, y }, i) => (where(x) && y > vertices[best].y + 1e-9 ? i : best), 0);

/** The first straight edge beyond the middle that runs along the head rather than across it. */
function sideOfHead(vertices: readonly Vertex[], middle: number): number {
  const widest = Math.max(...vertices.filter(({ x }) => x > middle).map(({ y }) => y));
  return vertices.findIndex(({ x, y, bulge }, i) => {
    const next = vertices[i + 1];
    return next && bulge === 0 && x > middle && y > 0.9 * widest && next.x - x > Math.abs(next.y - y);
  });
}

/** x per y of the straight edge that begins at a vertex. */
const slopeAt = (vertices: readonly Vertex[], i: number): number =>
  (vertices[i + 1].x - vertices[i].x) / (vertices[i + 1].y - vertices[i].y);

/** The straight line from one point over another, at half height y. */
const drawnOn = (from: Vertex, over: Vertex, y: number): Vertex => ({
  x: over.x + ((over.x - from.x) / (over.y - from.y)) * (y - over.y),
  y,
  bulge: 0,
});

/** Corner of the head before rounding: head flank and side drawn on until they meet. */
function crossing(vertices: readonly Vertex[], headFlank: number, side: number) {
  const slope = slopeAt(vertices, headFlank);
  const { x, y } = vertices[headFlank];
  return meeting(vertices[side + 1], vertices[side], { x, y, slope });
}

/** Where the line from a over b meets the line x = x₀ + slope·(y − y₀). */
function meeting(a: Vertex, b: Vertex, line: { x: number; y: number; slope: number }) {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = (line.x + line.slope * (a.y - line.y) - a.x) / (dx - line.slope * dy);
  return { x: a.x + t * dx, y: a.y + t * dy };
}
