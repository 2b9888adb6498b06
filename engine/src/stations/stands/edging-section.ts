import type { Path } from '../../section/outline.ts';
import { closedHollows, type Rolled, type Spread } from './exit-section.ts';
import type { Cavity } from './groove/cavity.ts';
import { runsOf, sewn } from './half-section/lower.ts';
import { areaBetween, leftOf, rightOf } from './half-section/measure.ts';
import { heightAt, piecesOf } from './half-section/pieces.ts';
import { drawn } from './half-section/stretch.ts';
import { type SpreadRule, spreadStrain } from './section-law.ts';

/** An edging pass presses foot tips and head sides and clears the web. */
export function clearsWeb(entry: Path, { half, webFootEnd, webHeadEnd }: Cavity): boolean {
  if (webFootEnd === undefined || webHeadEnd === undefined) return false;
  const middle = (webFootEnd + webHeadEnd) / 2;
  return heightAt(piecesOf(entry), middle) < heightAt(piecesOf(half), middle);
}

/**
 * Foot and head are two tall bars of their own, joined by a web that is left as it is: each is pressed across the gap
 * and grows along the rolls, away from the web, by the spread law of its own rectangle. Three rounds settle it.
 */
export function rolledOnEdge(
  entry: Path,
  cavity: Cavity,
  rule: SpreadRule,
  radius: (height: number) => number,
): Rolled {
  const [left, right] = [leftOf(entry), rightOf(entry)];
  const { webFootEnd: foot = left, webHeadEnd: head = right } = cavity;
  let shape = shapeWith(0, 0);
  for (let round = 0; round < 3; round++) {
    const [inFoot, inHead] = spreads(shape.exit);
    shape = shapeWith(strainIn(inFoot), strainIn(inHead));
  }
  return { entry, ...shape, spreads: spreads(shape.exit) };

  function shapeWith(footStrain: number, headStrain: number) {
    const [wider, longer] = [Math.exp(footStrain), Math.exp(headStrain)];
    const across = (x: number) =>
      x + (wider - 1) * Math.min(0, x - foot) + (longer - 1) * Math.max(0, x - head);
    const back = (x: number) =>
      x + (1 / wider - 1) * Math.min(0, x - foot) + (1 / longer - 1) * Math.max(0, x - head);
    const free = drawn(entry, (x, y) => [across(x), y]);
    const runs = closedHollows(free, cavity, runsOf(free, cavity.half));
    return { free, runs, exit: sewn(free, cavity.half, runs), across, back };
  }

  function spreads(exit: Path): Spread[] {
    const of = (part: 'foot' | 'head', b0: number, b1: number, a0: number, a1: number): Spread => {
      const h1 = (2 * a1) / b1;
      return { part, b0, b1, h0: (2 * a0) / b0, h1, R: radius(h1) };
    };
    const [newLeft, newRight] = [leftOf(exit), rightOf(exit)];
    return [
      of(
        'foot',
        foot - left,
        foot - newLeft,
        areaBetween(entry, left, foot),
        areaBetween(exit, newLeft, foot),
      ),
      of(
        'head',
        right - head,
        newRight - head,
        areaBetween(entry, head, right),
        areaBetween(exit, head, newRight),
      ),
    ];
  }

  function strainIn(spread: Spread): number {
    return spreadStrain(rule, { ...spread, friction: rule.friction }, rule.bar);
  }
}
