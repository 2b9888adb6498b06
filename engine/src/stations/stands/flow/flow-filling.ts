import type { Path } from '../../../section/outline.ts';
import type { Course } from '../course.ts';
import { clearsWeb } from '../edging-section.ts';
import type { Filling } from '../filling.ts';
import { upperHalf } from '../half-section/half-section.ts';
import { areaBetween } from '../half-section/measure.ts';
import type { Prepared } from '../prepare.ts';
import { type Misfit, misfits } from './groove-fit.ts';

/** How the section that metal flow left fits its groove. */
export interface FlowFilling extends Filling {
  readonly misfits: Misfit[];
}

/** As the handbook counts it, see `filling`, but of the section that came out. A flat pass has nothing to fill. */
export function flowFilling(prepared: Prepared, { outline }: Course): FlowFilling {
  const { groove, cavity, rolls, rolled } = prepared;
  const half = upperHalf(outline);
  if (groove.family === 'flat' || !half.ok) return { fill: 1, fin: 0, misfits: [] };
  const from = rolls.footFace === undefined ? cavity.from : (cavity.webFootEnd ?? cavity.from);
  // An edging pass clears web and flanks by design.
  const clears = clearsWeb(rolled.entry, cavity);
  const all = misfits(half.value, cavity, from, rolls.rail !== undefined).filter(
    ({ kind }) => kind === 'over' || !clears,
  );
  const fin = all.reduce((sum, { kind, area }) => sum + (kind === 'over' ? area : 0), 0);
  return { fill: fullness(half.value, prepared, from, fin), fin, misfits: all };
}

function fullness(exit: Path, { cavity }: Prepared, from: number, fin: number): number {
  const { half, to, mouth } = cavity;
  const open = (path: Path) => 2 * areaBetween(path, from, to);
  // Over the mouth of a head roll the opening counts up to its half width alone.
  const high = mouth
    ? open(half) - 2 * areaBetween(half, mouth.from, mouth.to) + 2 * mouth.half * (mouth.to - mouth.from)
    : open(half);
  const within = mouth ? open(exit) - fin : open(exit);
  return high > 0 ? Math.min(1, within / high) : 1;
}
