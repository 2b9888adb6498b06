import type { Path } from '../../../section/outline.ts';
import type { UniversalGroove } from './groove.ts';
import { rounded } from './two-high.ts';

/** How far the collar of the head roll is drawn beyond the mouth, half height, m. */
export const collarReach = 0.0705;

/** The top roll from the foot side to the head side. */
export function universalProfile(groove: UniversalGroove): Path {
  const { webFootEnd, webHeadEnd, webRadius, toeHalf, toeRadius, rollEdge } = groove;
  const web = groove.gap / 2;
  const kink = webFootEnd - (toeHalf - web) / groove.footSlope;
  return rounded([
    [kink - (rollEdge - toeHalf) / groove.toeSlope, rollEdge, 0],
    [kink, toeHalf, toeRadius],
    [webFootEnd, web, webRadius],
    [webHeadEnd, web, webRadius],
    [webHeadEnd + (rollEdge - web) / groove.headSlope, rollEdge, 0],
  ]);
}

/** The foot roll is a plain barrel: a line across the gap, from below to above. */
export const footRollProfile = (x: number, rollEdge: number): Path => ({
  vertices: [
    { x, y: -rollEdge, bulge: 0 },
    { x, y: rollEdge, bulge: 0 },
  ],
});

/** The head roll with its groove, from the lower collar over the crown to the upper one; `face` is x on the axis. */
export function headRollProfile(groove: UniversalGroove, face: number): Path {
  const { headCorner, headDrop, headMouth, headDepth, headRadius, mouthRadius, collarSlope } = groove;
  const mouth = face - headDepth;
  const upper: [number, number, number][] = [
    [face - headDrop, headCorner, headRadius],
    [mouth, headMouth, mouthRadius],
    [mouth + collarReach / collarSlope, headMouth + collarReach, 0],
  ];
  const lower = upper.map(([x, y, radius]): [number, number, number] => [x, -y, radius]).reverse();
  return rounded([...lower, [face, 0, 0], ...upper]);
}
