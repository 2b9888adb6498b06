import type { Outline } from '../../../section/outline.ts';
import type { Element } from '../elements.ts';
import { upperHalf } from '../half-section/half-section.ts';
import { areaBetween, leftOf, rightOf } from '../half-section/measure.ts';
import type { Prepared } from '../prepare.ts';

/** Areas of foot, web and head, or of the whole bar, before and after the pass, m². */
export type ElementAreas = Pick<Element, 'name' | 'entryArea' | 'exitArea'>;

/**
 * Areas of the elements by metal flow. The entering bar is parted where the handbook parts it, the leaving one at the
 * ends of the groove's web: in formers foot and head so lose metal to the web by definition.
 */
export function elementAreas(
  { rolled, cavity }: Prepared,
  outline: Outline,
  elements: readonly Element[],
): ElementAreas[] {
  const exit = upperHalf(outline);
  if (!exit.ok) return [];
  const half = exit.value;
  const { webFootEnd = leftOf(half), webHeadEnd = rightOf(half) } = cavity;
  const ends =
    elements.length === 1
      ? [leftOf(half), rightOf(half)]
      : [leftOf(half), webFootEnd, webHeadEnd, rightOf(half)];
  return elements.map(({ name, from, to }, k) => ({
    name,
    entryArea: 2 * areaBetween(rolled.entry, from, to),
    exitArea: 2 * areaBetween(half, ends[k], ends[k + 1]),
  }));
}
