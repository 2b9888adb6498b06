import type { Rolled, Spread } from './exit-section.ts';
import type { Cavity } from './groove/cavity.ts';
import type { SetRolls } from './groove/rolls.ts';
import { areaBetween, leftOf, rightOf } from './half-section/measure.ts';

/** A part of the section as a flat bar between two rolls: what the handbook laws are asked about. m, m². */
export interface Element {
  readonly name: 'bar' | 'foot' | 'web' | 'head';
  readonly roll: 'horizontal' | 'foot roll' | 'head roll';
  readonly entryArea: number;
  readonly exitArea: number;
  readonly h0: number;
  readonly h1: number;
  readonly b0: number;
  readonly b1: number;
  /** Radius that gives the arc of the pass: of one of two alike rolls, or twice that of a single one. */
  readonly R: number;
  /** Width of this element on which the horizontal roll's flank leans, as seen across the gap. */
  readonly leaning: number;
  /** Entering place along the rolls, for its temperature. */
  readonly from: number;
  readonly to: number;
}

/**
 * Foot, web and head, or the whole bar. Between horizontal rolls an element is as wide as it is touched and as thick as
 * the free bar would stand there; parts that are only carried along have no force of their own.
 */
export function elementsOf(rolled: Rolled, cavity: Cavity, rolls: SetRolls, axis: number): Element[] {
  const { entry } = rolled;
  const { webFootEnd, webHeadEnd } = cavity;
  const [left, right] = [leftOf(entry), rightOf(entry)];
  if (webFootEnd === undefined || webHeadEnd === undefined)
    return [pressed('bar', rolled, axis, left, right)];
  if (rolls.footFace === undefined || rolls.headFace === undefined) {
    const inBar = (x: number) => Math.min(Math.max(rolled.back(x), left), right);
    const [foot, head] = [inBar(webFootEnd), inBar(webHeadEnd)];
    return [
      pressed('foot', rolled, axis, left, foot),
      pressed('web', rolled, axis, foot, head),
      pressed('head', rolled, axis, head, right),
    ];
  }
  const [foot, head] = rolled.spreads;
  return [
    squeezed(foot, 'foot roll', rolled, left, webFootEnd),
    pressed('web', rolled, axis, webFootEnd, webHeadEnd),
    squeezed(head, 'head roll', rolled, webHeadEnd, right),
  ];
}

/** Between the horizontal rolls, over the entering places `from` to `to`. */
function pressed(name: Element['name'], rolled: Rolled, axis: number, from: number, to: number): Element {
  const [x0, x1] = [exitPlace(rolled, from), exitPlace(rolled, to)];
  let [width, free, left] = [0, 0, 0];
  for (const run of rolled.runs) {
    const [a, b] = [Math.max(run.x0, x0), Math.min(run.x1, x1)];
    if (!run.touching || b <= a) continue;
    width += b - a;
    free += 2 * areaBetween(rolled.free, a, b);
    left += 2 * areaBetween(rolled.exit, a, b);
  }
  const [h0, h1] = width > 0 ? [free / width, left / width] : [0, 0];
  const stretch = to > from && x1 > x0 ? (x1 - x0) / (to - from) : 1;
  return {
    name,
    roll: 'horizontal',
    entryArea: 2 * areaBetween(rolled.entry, from, to),
    exitArea: 2 * areaBetween(rolled.exit, x0, x1),
    h0,
    h1,
    b0: width / stretch,
    b1: width,
    R: axis - h1 / 2,
    leaning: 0,
    from,
    to,
  };
}

/** Between a vertical roll and the flanks of the horizontal ones. A single roll's arc is that of two of twice its radius. */
function squeezed(spread: Spread, roll: Element['roll'], rolled: Rolled, from: number, to: number): Element {
  const [x0, x1] = [exitPlace(rolled, from), exitPlace(rolled, to)];
  const leaning = rolled.runs.reduce(
    (sum, { touching, x0: a, x1: b }) =>
      sum + (touching ? Math.max(0, Math.min(b, x1) - Math.max(a, x0)) : 0),
    0,
  );
  const { b0, b1, h0, h1 } = spread;
  return {
    name: spread.part,
    roll,
    entryArea: 2 * areaBetween(rolled.entry, from, to),
    exitArea: 2 * areaBetween(rolled.exit, x0, x1),
    h0,
    h1,
    b0,
    b1,
    R: 2 * spread.R,
    leaning,
    from,
    to,
  };
}

/** Ends of the bar go to the ends of the leaving section, whatever was cut off there. */
function exitPlace({ entry, exit, across }: Rolled, x: number): number {
  if (x <= leftOf(entry)) return leftOf(exit);
  return x >= rightOf(entry) ? rightOf(exit) : Math.min(Math.max(across(x), leftOf(exit)), rightOf(exit));
}

/** Largest over smallest elongation of the elements, less 1. */
export function mismatchOf(elements: readonly Pick<Element, 'entryArea' | 'exitArea'>[]): number {
  const elongations = elements.map(({ entryArea, exitArea }) => entryArea / exitArea).filter(Number.isFinite);
  return elongations.length > 1 ? Math.max(...elongations) / Math.min(...elongations) - 1 : 0;
}
