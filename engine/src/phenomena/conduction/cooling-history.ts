import type { Field } from '../../outcome/field.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { type ConductOptions, conduct } from './conduct.ts';
import type { Conductor } from './conductor.ts';
import type { Conducted, HeatProblem, HeatState } from './heat-problem.ts';

/** Temperatures and shares of the changed phase at every step of a cooling: what the bending of the bar follows from. */
export interface CoolingHistory {
  /** s from the start, ascending, 0 first. */
  readonly times: Field;
  /** One row per time, °C per node. */
  readonly temperature: readonly Field[];
  /** One row per time, share of pearlite per node, 0 to 1. */
  readonly pearlite: readonly Field[];
  readonly end: Conducted;
}

/**
 * `conduct`, with every accepted step kept. For the cooling bed `problem.law` is austenite and `problem.change` its way
 * to pearlite. 500 nodes over three hours keep about 150 rows.
 */
export function coolingHistory(
  conductor: Conductor,
  problem: HeatProblem,
  start: HeatState,
  duration: number,
  options: Omit<ConductOptions, 'observe'> = {},
): Result<CoolingHistory> {
  const times: number[] = [];
  const temperature: Field[] = [];
  const pearlite: Field[] = [];
  const end = conduct(conductor, problem, start, duration, {
    ...options,
    observe(time, T, share) {
      times.push(time);
      temperature.push(Float64Array.from(T));
      pearlite.push(Float64Array.from(share));
    },
  });
  return end.ok ? ok({ times: Float64Array.from(times), temperature, pearlite, end: end.value }) : end;
}
