import type { Visit } from '@bloomrail/engine/line/run-line';
import type { Summary } from '@bloomrail/engine/line/summary';
import type { Failure } from '@bloomrail/engine/outcome/result';
import type { Issue } from '@bloomrail/engine/units/issue';
import type { Json } from '../plan/plan-file.ts';

/** To the worker: compute this plan now and drop what was being computed; or stop and keep what is finished. */
export type Order =
  | { readonly kind: 'compute'; readonly run: number; readonly plan: Json }
  | { readonly kind: 'stop' };

/** A place on the line before the bar has come there. `path` is where its settings stand in the plan file. */
export interface Stop {
  readonly code: string;
  readonly title: string;
  readonly group: Visit['group'];
  readonly path: string;
}

/** From the worker, one by one, in travel order; `run` is the number of the order that is answered. */
export type Answer = { readonly run: number } & Content;

export type Content =
  | { readonly kind: 'issues'; readonly issues: readonly Issue[] }
  | { readonly kind: 'stops'; readonly stops: readonly Stop[] }
  | { readonly kind: 'visit'; readonly index: number; readonly visit: Visit }
  /** The station at `index` stands as it was sent before: the same bar met the same settings. */
  | { readonly kind: 'kept'; readonly index: number }
  | { readonly kind: 'done'; readonly summary: Summary }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly code: string; readonly failure: Failure };
