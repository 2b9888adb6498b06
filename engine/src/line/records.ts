import { z } from 'zod';
import type { StationRecord } from '../bar/station.ts';
import { CoolingBedRecord } from '../stations/cooling-bed/record.ts';
import { DescalerRecord } from '../stations/descaler/record.ts';
import { FurnaceRecord } from '../stations/furnace/record.ts';
import { SawRecord } from '../stations/saws/record.ts';
import { PassRecord } from '../stations/stands/record.ts';
import { StraightenersRecord } from '../stations/straighteners/record.ts';
import { YardRecord } from '../stations/yard/record.ts';
import type { LineRun } from './run-line.ts';
import { Summary } from './summary.ts';

/** Schema of the record of each kind of station: keys, units, titles. */
export const recordSchemas: Readonly<Record<string, z.ZodType>> = {
  furnace: FurnaceRecord,
  descaler: DescalerRecord,
  pass: PassRecord,
  saws: SawRecord,
  'cooling-bed': CoolingBedRecord,
  straighteners: StraightenersRecord,
  yard: YardRecord,
};

/** A record as it stands in a file: keys with units. Every digit is kept. */
export const writeRecord = (record: StationRecord): unknown => z.encode(recordSchemas[record.kind], record);

/** A whole run as it stands in a file. */
export function writeRun({ visits, balance, summary }: LineRun) {
  return {
    summary: z.encode(Summary, summary),
    balance,
    findings: visits.flatMap(({ code, record }) =>
      (writeRecord(record) as { findings: object[] }).findings.map((finding) => ({
        station: code,
        ...finding,
      })),
    ),
    records: visits.map(({ code, title, group, record }) => ({
      code,
      title,
      group,
      record: writeRecord(record),
    })),
  };
}
