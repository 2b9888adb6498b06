import type { Field } from '../../outcome/field.ts';
import type { FlowRoll, Side } from './problem.ts';

/**
 * A roll as the section at some distance before the exit plane meets it. The outline runs so that the roll's metal lies
 * on its left and the bar on its right: to the right on the top roll, upwards on the left one.
 *
 *      roll ░░░░ ↑ normal, out of the bar
 *      ●───────→───────●  outline
 *             bar
 */
export interface RollSurface {
  readonly roll: FlowRoll;
  /** Its outline in the exit plane, in that order. */
  readonly profile: Float64Array;
  /** 1 when the axis lies at larger coordinates than the bar (top, right), else −1. */
  readonly beyond: 1 | -1;
  /** Index of the coordinate across the axis: 1 (y) for top and bottom, 0 (x) for left and right. */
  readonly across: 0 | 1;
}

export function rollSurface(roll: FlowRoll): RollSurface {
  const across = isHorizontal(roll.side) ? 1 : 0;
  const along = 1 - across;
  const rising = roll.side === 'top' || roll.side === 'left';
  const points = Float64Array.from(roll.profile);
  const runsUp = points[points.length - 2 + along] >= points[along];
  if (runsUp !== rising) reversePoints(points);
  return { roll, profile: points, beyond: roll.side === 'top' || roll.side === 'right' ? 1 : -1, across };
}

/** Of the outline's points, m. */
export function largestRadius({ roll, profile, across }: RollSurface): number {
  let radius = 0;
  for (let i = across; i < profile.length; i += 2)
    radius = Math.max(radius, Math.abs(roll.axis - profile[i]));
  return radius;
}

export const isHorizontal = (side: Side): boolean => side === 'top' || side === 'bottom';

function reversePoints(points: Float64Array): void {
  for (let i = 0, j = points.length - 2; i < j; i += 2, j -= 2) {
    [points[i], points[j]] = [points[j], points[i]];
    [points[i + 1], points[j + 1]] = [points[j + 1], points[i + 1]];
  }
}

/** The outline at a distance before the exit plane: every point on its circle around the axis; written into `out`. */
export function outlineAt(
  { roll, profile, across, beyond }: RollSurface,
  distance: number,
  out: Float64Array,
): void {
  for (let i = 0; i < profile.length; i += 2) {
    const radius = Math.abs(roll.axis - profile[i + across]);
    const leg = Math.sqrt(Math.max(0, radius * radius - distance * distance));
    out[i + across] = roll.axis - beyond * leg;
    out[i + 1 - across] = profile[i + 1 - across];
  }
}

/** Nearest place of an outline to a point: gap (negative inside the roll) and the normal there, out of the bar. */
export interface Nearest {
  gap: number;
  nx: number;
  ny: number;
  /** The nearest point itself, m. */
  x: number;
  y: number;
}

export const nowhere = (): Nearest => ({ gap: Number.POSITIVE_INFINITY, nx: 0, ny: 0, x: 0, y: 0 });

/** Writes into `out`. A point beyond an end of the outline is outside the roll. */
export function nearestOnRoll(outline: Field, x: number, y: number, out: Nearest): void {
  describe(outline, x, y, nearestSegment(outline, x, y, undefined), out);
}

/**
 * In a corner that holds the bar's edge a node meets a second face: the nearest one whose normal turns away from the
 * first by more than 35° and that stands in front of it. An infinite gap when there is none.
 */
export function secondNearest(outline: Field, x: number, y: number, first: Nearest, out: Nearest): void {
  describe(outline, x, y, nearestSegment(outline, x, y, first), out);
}

function nearestSegment(outline: Field, x: number, y: number, first: Nearest | undefined): number {
  let [best, found] = [Number.POSITIVE_INFINITY, -1];
  for (let i = 0; i + 3 < outline.length; i += 2) {
    const [ax, ay] = [outline[i], outline[i + 1]];
    const [dx, dy] = [outline[i + 2] - ax, outline[i + 3] - ay];
    const square = dx * dx + dy * dy;
    if (square === 0) continue;
    const share = ((x - ax) * dx + (y - ay) * dy) / square;
    const kept = Math.min(1, Math.max(0, share));
    const [px, py] = [ax + kept * dx, ay + kept * dy];
    const away = (x - px) * (x - px) + (y - py) * (y - py);
    if (away >= best) continue;
    if (first && !turnsAway(first, -dy / Math.sqrt(square), dx / Math.sqrt(square), px, py)) continue;
    [best, found] = [away, i];
  }
  return found;
}

const turnsAway = (first: Nearest, nx: number, ny: number, px: number, py: number): boolean =>
  nx * first.nx + ny * first.ny < 0.82 && (px - first.x) * first.nx + (py - first.y) * first.ny < -1e-6;

function describe(outline: Field, x: number, y: number, i: number, out: Nearest): void {
  out.gap = Number.POSITIVE_INFINITY;
  if (i < 0) return;
  const [dx, dy] = [outline[i + 2] - outline[i], outline[i + 3] - outline[i + 1]];
  const length = Math.hypot(dx, dy);
  const share = ((x - outline[i]) * dx + (y - outline[i + 1]) * dy) / (length * length);
  const kept = Math.min(1, Math.max(0, share));
  out.x = outline[i] + kept * dx;
  out.y = outline[i + 1] + kept * dy;
  out.nx = -dy / length;
  out.ny = dx / length;
  const [rx, ry] = [x - out.x, y - out.y];
  if (kept === share) {
    out.gap = -(rx * out.nx + ry * out.ny);
    return;
  }
  const distance = Math.hypot(rx, ry);
  const corner = kept === 0 ? i : i + 2;
  const isEnd = corner === 0 || corner === outline.length - 2;
  const sign = isEnd ? 1 : cornerSide(outline, corner, rx, ry);
  out.gap = sign * distance;
  if (distance < 1e-12) return;
  out.nx = (-sign * rx) / distance;
  out.ny = (-sign * ry) / distance;
}

/** +1 when a point lies on the bar's side of a corner of the outline, by the mean of both normals. */
function cornerSide(outline: Field, corner: number, rx: number, ry: number): 1 | -1 {
  let [nx, ny] = [0, 0];
  for (const i of [corner - 2, corner]) {
    const [dx, dy] = [outline[i + 2] - outline[i], outline[i + 3] - outline[i + 1]];
    const length = Math.hypot(dx, dy) || 1;
    nx -= dy / length;
    ny += dx / length;
  }
  return rx * nx + ry * ny > 0 ? -1 : 1;
}
