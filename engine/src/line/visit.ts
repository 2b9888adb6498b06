import type { StationRecord } from '../bar/station.ts';

/** One stop of the bar on its way, in travel order. */
export interface Visit {
  /** Two or three characters, the mill's own: RF, DS, B1, K2, U1, E1, UF, HS, CB, ST, CT. */
  readonly code: string;
  /** 'Reheating furnace', 'Box pass 3'. */
  readonly title: string;
  readonly group: 'heat' | 'breakdown' | 'forming' | 'universal' | 'cold';
  readonly record: StationRecord;
}
