import { type Measure, shareOfLimit } from '@bloomrail/engine/bar/measure';
import { units } from '@bloomrail/engine/units/unit';
import { decimalsFor, figure } from '../ink/numbers.ts';

/** One row of "against limits": words and the lengths of its drawing, as shares of the row's own scale. */
export interface MeasureRow {
  readonly name: string;
  readonly value: string;
  /** 'of 6 000 kN', 'at least 0.60 MPa', or the unit alone. */
  readonly limit: string;
  readonly range: string;
  readonly was: string | undefined;
  readonly sure: Measure['sure'];
  readonly law: string;
  readonly level: 'inside' | 'near' | 'outside';
  readonly bar: number;
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly mark: number | undefined;
}

/** The limit of every row stands at the same place, so that a column of bars is read against one line. */
const limitAt = 0.86;

export function measureRow(measure: Measure, before?: Measure): MeasureRow {
  const { value, low, high, limit, limitIs, unit, sure, law } = measure;
  const decimals = decimalsFor(limit ?? value, unit);
  const print = (number: number) => figure(number, unit, decimals);
  const scale = limit ? limitAt / Math.abs(limit) : limitAt / Math.max(Math.abs(value), 1e-12);
  const onScale = (number: number | undefined) =>
    number === undefined ? undefined : Math.min(1, Math.max(0, Math.abs(number) * scale));
  const label = units[unit].label;
  const old = before && print(before.value);
  return {
    name: [measure.name, measure.part].filter(Boolean).join(', '),
    value: `${sure === 'calibrated' ? '' : '≈ '}${print(value)}`,
    limit:
      limit === undefined
        ? label
        : `${limitIs === 'least' ? 'at least' : 'of'} ${print(limit)} ${label}`.trim(),
    range: low === undefined || high === undefined ? '' : `${print(low)} to ${print(high)}`,
    was: old === print(value) ? undefined : old,
    sure,
    law,
    level: levelOf(measure),
    bar: onScale(value) ?? 0,
    from: onScale(low),
    to: onScale(high),
    mark: limit === undefined ? undefined : limitAt,
  };
}

/** Near is over 90 % of the limit, or a range that reaches it. */
export function levelOf(measure: Measure): MeasureRow['level'] {
  const share = shareOfLimit(measure);
  if (share === undefined) return 'inside';
  if (share > 1) return 'outside';
  const { low, high, limit = 0, limitIs } = measure;
  const reaches =
    limitIs === 'least' ? low !== undefined && low <= limit : high !== undefined && high >= limit;
  return share > 0.9 || reaches ? 'near' : 'inside';
}

/** The measure of the same name and part in another list. */
export const sameIn = (
  measures: readonly Measure[] | undefined,
  { name, part }: Measure,
): Measure | undefined => measures?.find((other) => other.name === name && other.part === part);
