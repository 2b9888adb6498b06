import type { Bar } from '../../bar/bar.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { type Bites, bitesOf } from './bite.ts';
import { type Element, elementsOf, mismatchOf } from './elements.ts';
import type { Stand } from './equipment.ts';
import { closed } from './half-section/half-section.ts';
import type { Prepared } from './prepare.ts';
import type { PassSettings } from './settings.ts';
import { type Timing, timingOf } from './timing.ts';

/** How the bar runs through the stand: what shapes and speeds decide, whatever the temperatures. */
export interface Course {
  /** The leaving section. */
  readonly outline: Outline;
  /** Entry over exit area. */
  readonly elongation: number;
  /** Girth of the section before and after, m. */
  readonly girth: { readonly before: number; readonly after: number };
  readonly timing: Timing;
  /** m/s at the rolls. */
  readonly speed: number;
  /** Roll speed, as it is set, at which the bar runs so: another than the set one where the stand before feeds it. m/s. */
  readonly rollSpeed: number;
  readonly elements: readonly Element[];
  /** Largest over smallest elongation of the elements, less 1. */
  readonly mismatch: number;
  readonly bites: Bites;
}

export function courseOf(bar: Bar, settings: PassSettings, stand: Stand, prepared: Prepared): Course {
  const { entry, rolled, rolls, cavity, axis, verticalRadius } = prepared;
  const outline = closed(rolled.exit);
  const [before, after] = [sectionProperties(entry.outline), sectionProperties(outline)];
  const elongation = before.area / after.area;
  const length = entry.length * elongation;
  const timing = timingOf(bar, { ...settings, drive: stand.drive, rollingTime: length / settings.speed });
  const elements = elementsOf(rolled, cavity, rolls, axis);
  return {
    outline,
    elongation,
    girth: { before: before.perimeter, after: after.perimeter },
    timing,
    speed: length / timing.rollingTime,
    rollSpeed: length / timing.rollingTime,
    elements,
    mismatch: mismatchOf(elements),
    bites: bitesOf(rolled.entry, rolls, axis, verticalRadius),
  };
}
