import type { Bar } from '../../bar/bar.ts';
import type { Balance } from '../../bar/station.ts';
import type { Course } from './course.ts';
import type { Stand } from './equipment.ts';
import type { Flowed } from './flow/flowed.ts';
import type { Prepared } from './prepare.ts';
import type { PassSettings } from './settings.ts';
import type { VisitOfPlace } from './visits.ts';

/** All that happened, before it is written down. */
export interface Happened {
  readonly bar: Bar;
  readonly leaving: Bar;
  readonly settings: PassSettings;
  readonly stand: Stand;
  readonly prepared: Prepared;
  readonly course: Course;
  readonly visits: readonly VisitOfPlace[];
  readonly corrections: readonly number[];
  readonly balance: Balance;
  /** Where metal flow computed the pass. */
  readonly flow?: Flowed;
}
