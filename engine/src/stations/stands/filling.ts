import type { Path } from '../../section/outline.ts';
import { areaBetween, leftOf, rightOf } from './half-section/measure.ts';
import { heightAt, piecesOf } from './half-section/pieces.ts';
import type { Prepared } from './prepare.ts';

export interface Filling {
  /** Share of the closed part of the groove that is steel. */
  readonly fill: number;
  /** Metal between collars or in the mouth of a head roll, m². */
  readonly fin: number;
}

/**
 * How full the groove is. Boxes and formers: between their walls. Universal passes: from the web to the crown, since toes
 * are free by design. A flat pass has nothing to fill. In a finisher head metal that would have grown wider than the
 * groove counts as fin over the collar's gap.
 */
export function filling({ groove, cavity, rolled, rolls }: Prepared): Filling {
  if (groove.family === 'flat') return { fill: 1, fin: 0 };
  const { exit } = rolled;
  const from = rolls.footFace === undefined ? cavity.from : (cavity.webFootEnd ?? cavity.from);
  const opening = closedOpening(cavity.half, from, cavity.to, cavity.mouth);
  const fill = opening > 0 ? Math.min(1, areaBetween(exit, from, cavity.to) / opening) : 1;
  return { fill, fin: rolls.footFace === undefined ? finAtWalls(exit, cavity) : finAtHead() };

  function finAtHead(): number {
    if (groove.family === 'finisher') {
      const head = rolled.spreads.find(({ part }) => part === 'head');
      const half = rolls.rail
        ? Math.max(...rolls.rail.half.vertices.slice(rolls.rail.headFlank).map(({ y }) => y))
        : 0;
      return head && half > 0
        ? 2 * Math.max(0, head.b1 / 2 - half - groove.headAllowance) * groove.collarGap
        : 0;
    }
    return cavity.mouth ? finInMouth(exit, cavity.mouth) : 0;
  }
}

interface Mouth {
  readonly half: number;
  readonly from: number;
  readonly to: number;
}

/** Between the walls; over the mouth of a head roll only up to its half width. */
function closedOpening(cavity: Path, from: number, to: number, mouth?: Mouth): number {
  if (!mouth) return areaBetween(cavity, from, to);
  const { half, from: open, to: shut } = mouth;
  return areaBetween(cavity, from, open) + half * (shut - open) + areaBetween(cavity, shut, to);
}

const finAtWalls = (exit: Path, { from, to }: { from: number; to: number }): number =>
  2 * (areaBetween(exit, leftOf(exit), from) + areaBetween(exit, to, rightOf(exit)));

/** Metal higher than the mouth is wide, both halves; midpoint rule in 30 strips. */
function finInMouth(exit: Path, { half, from, to }: Mouth): number {
  const pieces = piecesOf(exit);
  const step = (to - from) / 30;
  let area = 0;
  for (let k = 0; k < 30; k++)
    area += 2 * step * Math.max(0, heightAt(pieces, from + (k + 0.5) * step) - half);
  return area;
}
