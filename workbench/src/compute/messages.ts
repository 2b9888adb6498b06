import type { Memory, Stage } from '@bloomrail/engine/line/run-line';
import type { Summary } from '@bloomrail/engine/line/summary';
import type { Visit } from '@bloomrail/engine/line/visit';
import type { Failure } from '@bloomrail/engine/outcome/result';
import type { Issue } from '@bloomrail/engine/units/issue';
import type { Json } from '../plan/plan-file.ts';

/** To a worker: compute this plan now and drop what was being computed; or stop and keep what is finished. */
export type Order =
  | { readonly kind: 'compute'; readonly run: number; readonly plan: Json }
  | { readonly kind: 'stop' };

/** To a worker, once: its name and its line to the other worker. */
export interface Introduction {
  readonly kind: 'meet';
  readonly name: string;
  readonly other: MessagePort;
}

/** From worker to worker, as soon as a station is finished, so that either can go on from it. */
export interface Legacy {
  readonly charged: Memory['charged'];
  readonly stage: Stage;
  readonly stamp: string;
  /** Stamp of the station before; absent at the furnace. */
  readonly after?: string;
}

/** A place on the line before the bar has come there. `path` is where its settings stand in the plan file. */
export interface Stop {
  readonly code: string;
  readonly title: string;
  readonly group: Visit['group'];
  readonly path: string;
}

/** From a worker, in travel order; `run` is the number of the order that is answered. */
export interface Answer {
  readonly run: number;
  readonly contents: readonly Content[];
}

export type Content =
  | { readonly kind: 'issues'; readonly issues: readonly Issue[] }
  | { readonly kind: 'stops'; readonly stops: readonly Stop[] }
  | Visited
  | { readonly kind: 'done'; readonly summary: Summary }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly code: string; readonly failure: Failure };

export type Visited =
  /** A station freshly computed; the stamp is its name from now on, in every worker. */
  | { readonly kind: 'visit'; readonly index: number; readonly stamp: string; readonly visit: Visit }
  /** The station at `index` is the one sent before under this stamp: the same bar met the same settings. */
  | { readonly kind: 'kept'; readonly index: number; readonly stamp: string };
