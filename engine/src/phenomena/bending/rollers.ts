import type { Field } from '../../outcome/field.ts';
import type { Plane } from './cold-section.ts';

/**
 * Staggered rollers that bend a passing bar in one plane. Deflection u is positive toward the foot (height plane) or the
 * left side (side plane), so u'' = curvature. Even-numbered rollers, counted from 1, press in that direction.
 *
 *         2       4           position   m, ascending
 *    ───╮ ▼ ╭───╮ ▼ ╭──       offset     m, deflection each roller asks for
 *       ╰───╯   ╰───╯
 *       ▲       ▲
 *       1       3
 */
export interface RollerLine {
  readonly plane: Plane;
  readonly position: Field;
  readonly offset: Field;
}

/** Rollers at equal distances; `pressing` holds the offsets of rollers 2, 4, 6 …; odd rollers stand on the pass line. */
export function rollerLine(
  plane: Plane,
  count: number,
  pitch: number,
  pressing: Field,
  last = 0,
): RollerLine {
  const index = Array.from({ length: count }, (_, i) => i);
  const offset = index.map((i) => (i % 2 ? (pressing[(i - 1) / 2] ?? 0) : 0));
  if (count % 2) offset[count - 1] = -last;
  return { plane, position: Float64Array.from(index, (i) => i * pitch), offset: Float64Array.from(offset) };
}

/** Intervals between two rollers: even, for Simpson. Eight leave 0.01/km in the curvature that leaves. */
export const stepsPerSpan = 8;

/** Integral of curvature times a straight line from 0 at roller `from` to 1 at roller `to` (or down from 1). */
function lineIntegral(
  curvature: Field,
  { position }: RollerLine,
  from: number,
  to: number,
  rising: boolean,
): number {
  const length = position[to] - position[from];
  let sum = 0;
  for (let span = from; span < to; span++) {
    const step = (position[span + 1] - position[span]) / stepsPerSpan;
    for (let j = 0; j <= stepsPerSpan; j++) {
      const weight = j === 0 || j === stepsPerSpan ? 1 : j % 2 ? 4 : 2;
      const share = (position[span] + j * step - position[from]) / length;
      sum += ((step * weight) / 3) * curvature[span * stepsPerSpan + j] * (rising ? share : 1 - share);
    }
  }
  return sum;
}

/** Angle by which the bar's curvature misses the kink that three touching rollers ask for: zero when it passes them all. */
export function kinkMissing(curvature: Field, line: RollerLine, a: number, b: number, c: number): number {
  const turned = lineIntegral(curvature, line, a, b, true) + lineIntegral(curvature, line, b, c, false);
  return turned - kinkAsked(line, a, b, c);
}

function kinkAsked({ position, offset }: RollerLine, a: number, b: number, c: number): number {
  return (
    (offset[c] - offset[b]) / (position[c] - position[b]) -
    (offset[b] - offset[a]) / (position[b] - position[a])
  );
}

/** Change of the kink asked at roller b when roller `moved` goes 1 m further. */
export function kinkSlope({ position }: RollerLine, a: number, b: number, c: number, moved: number): number {
  const [before, after] = [1 / (position[b] - position[a]), 1 / (position[c] - position[b])];
  if (moved === a) return before;
  if (moved === b) return -before - after;
  return moved === c ? after : 0;
}

/** Deflection of the bar at a roller that does not touch, m; `touching` holds the numbers of those that do. */
export function deflectionAt(
  curvature: Field,
  line: RollerLine,
  touching: readonly number[],
  roller: number,
): number {
  const { position, offset } = line;
  const next = touching.findIndex((each) => each > roller);
  if (next === 0) return beforeFirst(curvature, line, touching, roller);
  if (next < 0) return behindLast(curvature, line, touching, roller);
  const [a, b] = [touching[next - 1], touching[next]];
  const [left, right] = [position[roller] - position[a], position[b] - position[roller]];
  const chord = (offset[a] * right + offset[b] * left) / (left + right);
  const bow =
    lineIntegral(curvature, line, a, roller, true) + lineIntegral(curvature, line, roller, b, false);
  return chord - ((left * right) / (left + right)) * bow;
}

function beforeFirst(
  curvature: Field,
  line: RollerLine,
  touching: readonly number[],
  roller: number,
): number {
  const { position, offset } = line;
  const [a, b] = touching;
  const chord = (offset[b] - offset[a]) / (position[b] - position[a]);
  const slope = chord - lineIntegral(curvature, line, a, b, false);
  const away = position[a] - position[roller];
  return offset[a] - slope * away + (curvature[0] * away ** 2) / 2;
}

function behindLast(curvature: Field, line: RollerLine, touching: readonly number[], roller: number): number {
  const { position, offset } = line;
  const [a, b] = touching.slice(-2);
  const chord = (offset[b] - offset[a]) / (position[b] - position[a]);
  const slope = chord + lineIntegral(curvature, line, a, b, true);
  const away = position[roller] - position[b];
  return offset[b] + slope * away + (curvature[curvature.length - 1] * away ** 2) / 2;
}

/** Moments at all rollers from those at the touching inner ones: straight across rollers that do not touch. */
export function spreadMoments(
  { position }: RollerLine,
  touching: readonly number[],
  inner: Field,
): Float64Array {
  const moment = new Float64Array(position.length);
  for (let k = 1; k < touching.length - 1; k++) moment[touching[k]] = inner[k - 1];
  for (let k = 0; k < touching.length - 1; k++) {
    const [a, b] = [touching[k], touching[k + 1]];
    for (let i = a + 1; i < b; i++) {
      const share = (position[i] - position[a]) / (position[b] - position[a]);
      moment[i] = moment[a] + share * (moment[b] - moment[a]);
    }
  }
  return moment;
}

/** Force of each roller on the bar, N; positive the way that roller can press. */
export function pressForces({ position }: RollerLine, moment: Field): Float64Array {
  const last = position.length - 1;
  return Float64Array.from(position, (_, i) => {
    const before = i > 0 ? (moment[i] - moment[i - 1]) / (position[i] - position[i - 1]) : 0;
    const after = i < last ? (moment[i + 1] - moment[i]) / (position[i + 1] - position[i]) : 0;
    return (i % 2 ? 1 : -1) * (after - before);
  });
}
