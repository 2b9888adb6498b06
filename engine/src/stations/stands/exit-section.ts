import { bracketedRoot } from '../../numerics/roots.ts';
import type { Path } from '../../section/outline.ts';
import type { Cavity } from './groove/cavity.ts';
import { type Run, runsOf, sewn } from './half-section/lower.ts';
import { areaBetween, areaUnder, leftOf, rightOf } from './half-section/measure.ts';
import { drawn } from './half-section/stretch.ts';
import { type SpreadRule, spreadStrain } from './section-law.ts';

/** What a pass makes of a half section. */
export interface Rolled {
  readonly entry: Path;
  readonly exit: Path;
  /** The entering half as it would leave if no roll stood over it. */
  readonly free: Path;
  /** Where exit and rolls touch, along the rolls. */
  readonly runs: readonly Run[];
  /** From the entering bar's place along the rolls to the leaving one's, and back. */
  readonly across: (x: number) => number;
  readonly back: (x: number) => number;
  readonly spreads: readonly Spread[];
}

/** One use of the spread law; m. */
export interface Spread {
  readonly part: 'bar' | 'foot' | 'head';
  readonly b0: number;
  readonly b1: number;
  readonly h0: number;
  readonly h1: number;
  readonly R: number;
}

/**
 * How far a part that no roll touches is drawn in, both ways: its strain over that of the elongation. A free rod has
 * one half; the feet of five forming grooves in an own trial had 0.36 to 0.53, mean 0.42.
 */
const drawnIn = 0.42;

/**
 * Two rolls: the half section is drawn out sideways by s about the middle of the groove, cut by the groove, and s is
 * sought so that the equivalent rectangle (area over width, both sides) spreads as the law says.
 *
 * radius   of the rolls at a mean height of the leaving bar, m.
 */
export function rolledBetween(
  entry: Path,
  cavity: Cavity,
  rule: SpreadRule,
  radius: (height: number) => number,
): Rolled {
  const [left, right] = [leftOf(entry), rightOf(entry)];
  const b0 = right - left;
  const area0 = 2 * areaUnder(entry);
  const middle =
    cavity.webFootEnd === undefined ? (left + right) / 2 : Math.min(Math.max(middleOf(cavity), left), right);
  const parted = cavity.webFootEnd !== undefined;
  const shapeAt = (s: number, inward: number) => {
    const free = drawn(entry, (x, y) => [middle + s * (x - middle), y * inward]);
    const runs = stoppedByWalls(closedHollows(free, cavity, runsOf(free, cavity.half)), cavity, stop * b0);
    const exit = sewn(free, cavity.half, runs);
    return { free, runs, exit, area: 2 * areaUnder(exit) };
  };
  const rectangle = (s: number, area: number) => {
    const h1 = area / (s * b0);
    return { h0: area0 / b0, h1, b0, R: radius(h1), friction: rule.friction };
  };
  let [s, inward] = [1, 1];
  for (let round = 0; round < (parted ? 3 : 1); round++) {
    const off = (each: number) =>
      Math.log(each) - spreadStrain(rule, rectangle(each, shapeAt(each, inward).area), rule.bar);
    const root = off(1) < -1e-9 ? bracketedRoot(off, 1, 2, { tolerance: 1e-6 }) : undefined;
    s = root?.ok ? root.value.root : 1;
    if (parted) inward = Math.min(1, (shapeAt(s, inward).area / area0) ** drawnIn);
  }
  const { free, runs, exit, area } = shapeAt(s, inward);
  const { h0, h1, R } = rectangle(s, area);
  return {
    entry,
    exit,
    free,
    runs,
    across: (x) => middle + s * (x - middle),
    back: (x) => middle + (x - middle) / s,
    spreads: [{ part: 'bar', b0, b1: s * b0, h0, h1, R }],
  };
}

/**
 * Share of the bar's width that a wall holds back on each side before metal is forced between the collars: what would
 * have spread farther goes into elongation. Assumed, no source; own trial: walls reached, no fin, at 1 to 2 %.
 */
const stop = 0.02;

/** Beyond the walls only what exceeds their hold is left: the fin. */
function stoppedByWalls(runs: readonly Run[], { from, to }: Cavity, hold: number): Run[] {
  const left = Math.min(from, runs[0].x0 + hold);
  const right = Math.max(to, runs[runs.length - 1].x1 - hold);
  return runs
    .map((run) => ({ ...run, x0: Math.max(run.x0, left), x1: Math.min(run.x1, right) }))
    .filter(({ x0, x1 }) => x1 > x0);
}

const middleOf = ({ webFootEnd = 0, webHeadEnd = 0 }: Cavity): number => (webFootEnd + webHeadEnd) / 2;

/**
 * A hollow between two places where the bar is pressed fills from them, when they displace more than it needs. Hollows
 * at an open end and in the mouth of a head roll stay: nothing presses beyond them.
 */
export function closedHollows(free: Path, { half, mouth }: Cavity, runs: readonly Run[]): Run[] {
  const displaced = ({ x0, x1 }: Run) => areaBetween(free, x0, x1) - areaBetween(half, x0, x1);
  const isOpen = ({ x0, x1 }: Run) => mouth !== undefined && x0 < mouth.to && x1 > mouth.from;
  const filled = runs.map((run, i) => {
    const [before, after] = [runs[i - 1], runs[i + 1]];
    if (run.touching || isOpen(run) || !before?.touching || !after?.touching) return run;
    const isFed = -displaced(run) < (displaced(before) + displaced(after)) / 2;
    return isFed ? { ...run, touching: true } : run;
  });
  return filled.reduce<Run[]>((joined, run) => {
    const last = joined.at(-1);
    if (last?.touching === run.touching) joined[joined.length - 1] = { ...last, x1: run.x1 };
    else joined.push(run);
    return joined;
  }, []);
}
