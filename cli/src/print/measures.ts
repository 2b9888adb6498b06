import type { Measure } from '@bloomrail/engine/bar/measure';
import { fromSi, units } from '@bloomrail/engine/units/unit';
import { type Column, table } from './table.ts';

/** What stands against a limit: value, range, limit, and where the value comes from. */
export const measuresTable = (measures: readonly Measure[]): string =>
  measures.length === 0 ? 'Nothing stands against a limit here.' : table(columns, measures);

const columns: readonly Column<Measure>[] = [
  { head: 'Measure', align: 'left', cell: ({ name, part }) => (part ? `${name}, ${part}` : name) },
  {
    head: 'Value',
    align: 'right',
    cell: ({ value, unit, sure }) => (sure === 'computed' ? '≈ ' : '') + figure(value, unit),
  },
  { head: 'Range', align: 'left', cell: rangeOf },
  { head: 'Limit', align: 'right', cell: limitOf },
  { head: 'Unit', align: 'left', cell: ({ unit }) => units[unit].label },
  { head: 'Law', align: 'left', cell: ({ law }) => law },
];

const figure = (value: number, unit: Measure['unit']): string =>
  fromSi(value, unit).toFixed(units[unit].decimals);

function rangeOf({ low, high, unit }: Measure): string {
  if (low === undefined || high === undefined) return '';
  return `${figure(low, unit)} to ${figure(high, unit)}`;
}

function limitOf({ limit, limitIs, unit }: Measure): string {
  if (limit === undefined) return '';
  return `${limitIs === 'least' ? 'at least ' : ''}${figure(limit, unit)}`;
}
