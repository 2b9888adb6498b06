import type { StationRecord } from '@bloomrail/engine/bar/station';
import type { CoolingBedRecord } from '@bloomrail/engine/stations/cooling-bed/record';
import type { DescalerRecord } from '@bloomrail/engine/stations/descaler/record';
import type { FurnaceRecord } from '@bloomrail/engine/stations/furnace/record';
import type { SawRecord } from '@bloomrail/engine/stations/saws/record';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import type { StraightenersRecord } from '@bloomrail/engine/stations/straighteners/record';
import type { YardRecord } from '@bloomrail/engine/stations/yard/record';
import type { ComponentType } from 'react';
import type { Field } from '../plan/fields.ts';
import { BedField } from './bed/BedField.tsx';
import { DescalerField } from './descaler/DescalerField.tsx';
import { FurnaceField } from './furnace/FurnaceField.tsx';
import { PassField } from './pass/PassField.tsx';
import { SawField } from './saws/SawField.tsx';
import { StraightenersField } from './straighteners/StraightenersField.tsx';
import { YardField } from './yard/YardField.tsx';

/** The records by their kind. */
export type AnyRecord =
  | FurnaceRecord
  | DescalerRecord
  | PassRecord
  | SawRecord
  | CoolingBedRecord
  | StraightenersRecord
  | YardRecord;

/** A record of the engine says by its kind which of these it is. */
export const known = (record: StationRecord): AnyRecord => record as AnyRecord;

interface Drawing<R> {
  readonly record: R;
  readonly fields: readonly Field[];
  /** Which of the station's views is drawn. */
  readonly view: number;
}

const drawings = {
  furnace: FurnaceField,
  descaler: DescalerField,
  pass: PassField,
  saws: SawField,
  'cooling-bed': BedField,
  straighteners: StraightenersField,
  yard: YardField,
} as const;

/** Names of a station's views beside its table. */
export const viewsOf = (record: StationRecord): readonly string[] =>
  known(record).kind === 'straighteners' ? ['Height plane', 'Side plane'] : ['Drawing'];

/** The drawing of a station, by the kind of its record. */
export function FieldOf({ record, fields, view }: Drawing<StationRecord>) {
  const Picture = drawings[known(record).kind] as ComponentType<Drawing<StationRecord>>;
  return <Picture record={record} fields={fields} view={view} />;
}
