import type { Path } from '../../section/outline.ts';
import type { SetRolls } from './groove/rolls.ts';
import { leftOf, rightOf } from './half-section/measure.ts';
import { heightAt, piecesOf } from './half-section/pieces.ts';

/** First contact with the rolls: angle, rad, and distance before the exit plane, m. */
export interface FirstContact {
  readonly angle: number;
  readonly length: number;
}

/** The first contact with any roll, which is where the bite begins. */
export interface Bites {
  /** rad. */
  readonly horizontal: number;
  readonly vertical: number;
  /** m before the exit plane. */
  readonly length: number;
}

export function bitesOf(entry: Path, rolls: SetRolls, axis: number, verticalRadius: number): Bites {
  const horizontal = firstContact(entry, rolls.top, axis);
  const vertical = firstVerticalContact(entry, rolls, verticalRadius);
  return {
    horizontal: horizontal.angle,
    vertical: vertical.angle,
    length: Math.max(horizontal.length, vertical.length),
  };
}

const columns = 80;

/**
 * The entering bar against the horizontal rolls, column by column along the rolls: each column meets the roll at its own
 * radius, cos α = 1 − δ/r. The column that meets it first counts.
 */
export function firstContact(entry: Path, top: Path, axis: number): FirstContact {
  const [bar, groove] = [piecesOf(entry), piecesOf(top)];
  const from = Math.max(leftOf(entry), leftOf(top));
  const step = (Math.min(rightOf(entry), rightOf(top)) - from) / columns;
  let first: FirstContact = { angle: 0, length: 0 };
  for (let k = 0; k < columns; k++) {
    const x = from + (k + 0.5) * step;
    const y = heightAt(groove, x);
    const each = contactAt(heightAt(bar, x) - y, axis - y);
    if (each.length > first.length) first = each;
  }
  return first;
}

/** The vertical roll that is met first. */
function firstVerticalContact(entry: Path, { footFace, headFace }: SetRolls, radius: number): FirstContact {
  const foot = contactAt((footFace ?? leftOf(entry)) - leftOf(entry), radius);
  const head = contactAt(rightOf(entry) - (headFace ?? rightOf(entry)), radius);
  return foot.angle > head.angle ? foot : head;
}

/** A draught of δ on one roll of radius r. */
function contactAt(draught: number, radius: number): FirstContact {
  if (draught <= 0) return { angle: 0, length: 0 };
  const angle = Math.acos(Math.max(-1, 1 - draught / radius));
  return { angle, length: radius * Math.sin(Math.min(angle, Math.PI / 2)) };
}
