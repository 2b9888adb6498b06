import type { Path } from '../../section/outline.ts';
import { closedHollows, type Rolled, type Spread } from './exit-section.ts';
import type { Cavity } from './groove/cavity.ts';
import type { HotRail } from './groove/finisher.ts';
import { type Run, runsOf, sewn } from './half-section/lower.ts';
import { areaBetween, highestBetween, leftOf, rightOf } from './half-section/measure.ts';
import { heightAt, piecesOf } from './half-section/pieces.ts';
import { drawn } from './half-section/stretch.ts';
import { footSpreadStrain, type SpreadRule, spreadStrain } from './section-law.ts';
import { toeOf, withToe } from './toe.ts';

export interface UniversalRolls {
  readonly footFace: number;
  readonly headFace: number;
  /** Radius of the vertical rolls, m. */
  readonly radius: number;
  readonly rail?: HotRail;
}

/** The spread of foot and head grows over this share of the element, from the web outwards, so that nothing tears. */
const ramp = 0.1;

/**
 * Four rolls: the vertical rolls fix where foot and head end along the rolls; web and flanks are cut by the horizontal
 * rolls; toes and head grow across the gap by their own spread, which depends on the areas that come out: three rounds
 * settle it.
 */
export function rolledUniversal(
  entry: Path,
  cavity: Cavity,
  rule: SpreadRule,
  rolls: UniversalRolls,
): Rolled {
  const ends = { foot: cavity.webFootEnd ?? leftOf(entry), head: cavity.webHeadEnd ?? rightOf(entry) };
  const [left, right] = [leftOf(entry), rightOf(entry)];
  const map = sidewaysMap(faces(entry), ends, rolls);
  const halves = {
    foot: highestBetween(entry, left, ends.foot),
    head: highestBetween(entry, ends.head, right),
  };
  let strain = { foot: 0, head: 0 };
  let shape = shapeWith(strain);
  for (let round = 0; round < 3; round++) {
    strain = strainsOf(shape.exit);
    shape = shapeWith(strain);
  }
  return { entry, ...shape, ...map, spreads: spreadsOf(shape.exit, strain) };

  function shapeWith({ foot, head }: { foot: number; head: number }) {
    const grown = (x: number, y: number) =>
      y *
      Math.exp(
        foot * weight(ends.foot - x, ends.foot - left) + head * weight(x - ends.head, right - ends.head),
      );
    const free = drawn(entry, (x, y) => [map.across(x), grown(x, y)]);
    const runs = closedHollows(free, cavity, closedAtCrown(runsOf(free, cavity.half), free, cavity));
    const toe = toeOf(cavity.half, runs, rolls, halves.foot * Math.exp(foot));
    return { free, runs, exit: toe ? withToe(toe, free, cavity.half, runs) : sewn(free, cavity.half, runs) };
  }

  function strainsOf(exit: Path) {
    const [foot, head] = spreadsOf(exit, strain);
    const webStrain = Math.log(
      areaBetween(entry, ends.foot, ends.head) / areaBetween(exit, ends.foot, ends.head),
    );
    return {
      foot: footSpreadStrain(Math.log(foot.h0 / foot.h1), webStrain, rule.foot),
      head: spreadStrain(rule, { ...head, friction: rule.friction }, rule.head),
    };
  }

  function spreadsOf(exit: Path, { foot, head }: { foot: number; head: number }): [Spread, Spread] {
    const element = (name: 'foot' | 'head', half: number, grown: number, a0: number, a1: number): Spread => {
      const [b0, b1] = [2 * half, 2 * half * Math.exp(grown)];
      return { part: name, b0, b1, h0: (2 * a0) / b0, h1: (2 * a1) / b1, R: rolls.radius };
    };
    return [
      element(
        'foot',
        halves.foot,
        foot,
        areaBetween(entry, left, ends.foot),
        areaBetween(exit, leftOf(exit), ends.foot),
      ),
      element(
        'head',
        halves.head,
        head,
        areaBetween(entry, ends.head, right),
        areaBetween(exit, ends.head, rightOf(exit)),
      ),
    ];
  }
}

/** Nothing at the web, everything in the outer part of an element. */
const weight = (out: number, length: number): number => Math.min(1, Math.max(0, out / (ramp * length)));

interface Ends {
  readonly foot: number;
  readonly head: number;
}

interface Faces {
  readonly left: number;
  readonly right: number;
}

/** Mean places of foot back and head face, bulges and fins evened out: the lower 0.6 of each side's height. */
function faces(entry: Path): Faces {
  const [left, right] = [leftOf(entry), rightOf(entry)];
  const sixth = (right - left) / 6;
  const face = (from: number, to: number) => {
    const half = 0.6 * highestBetween(entry, Math.min(from, to), Math.max(from, to));
    return (
      to + (from - to) * (cappedArea(entry, Math.min(from, to), Math.max(from, to), half) / (half * sixth))
    );
  };
  return { left: face(left, left + sixth), right: face(right, right - sixth) };
}

/** Area under the path and under a height, between two places, m²; midpoint rule in 60 strips. */
function cappedArea(path: Path, from: number, to: number, height: number): number {
  const pieces = piecesOf(path);
  const width = (to - from) / 60;
  let area = 0;
  for (let k = 0; k < 60; k++) area += width * Math.min(height, heightAt(pieces, from + (k + 0.5) * width));
  return area;
}

/** Foot and head are pressed together between web and vertical roll; a roll that is not reached presses nothing. */
function sidewaysMap({ left, right }: Faces, ends: Ends, { footFace, headFace }: UniversalRolls) {
  const [newLeft, newRight] = [Math.max(left, footFace), Math.min(right, headFace)];
  const footShare = (ends.foot - newLeft) / (ends.foot - left);
  const headShare = (newRight - ends.head) / (right - ends.head);
  return {
    across: (x: number) => {
      if (x < ends.foot) return ends.foot - (ends.foot - x) * footShare;
      return x > ends.head ? ends.head + (x - ends.head) * headShare : x;
    },
    back: (x: number) => {
      if (x < ends.foot) return ends.foot - (ends.foot - x) / footShare;
      return x > ends.head ? ends.head + (x - ends.head) / headShare : x;
    },
  };
}

/** At the crown the opening is closed on the axis: what is missing there is a hollow between upper and lower half. */
function closedAtCrown(runs: Run[], free: Path, cavity: Cavity): Run[] {
  const last = runs.at(-1);
  const before = runs.at(-2);
  if (!last || last.touching || !before?.touching || rightOf(free) < cavity.to - 1e-9) return runs;
  const missing = areaBetween(cavity.half, last.x0, last.x1) - areaBetween(free, last.x0, last.x1);
  const displaced = areaBetween(free, before.x0, before.x1) - areaBetween(cavity.half, before.x0, before.x1);
  return missing < displaced ? [...runs.slice(0, -2), { ...before, x1: last.x1 }] : runs;
}
