import { z } from 'zod';
import { rescaled, unitNames } from '../units/rescale.ts';
import { fromSi, toSi, type Unit } from '../units/unit.ts';

/**
 * A result that stands beside its limit and its doubt: what loads, checks and lists "against limits" are made of.
 *
 * name          short trade term: 'force', 'torque', 'bite angle', 'scale loss'.
 * part          where several of one name stand side by side: 'horizontal roll', 'foot roll'; empty otherwise.
 * value         SI inside, in `unit` in files; low to high is its range; limit is the largest allowed value
 *               (or the smallest, where `limitIs` says 'least').
 * law           name of the law or model the value comes from.
 * sure          calibrated at this mill, computed by a model, or assumed by somebody.
 */
export interface Measure {
  readonly name: string;
  readonly part: string;
  readonly unit: Unit;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly limit?: number;
  readonly limitIs?: 'most' | 'least';
  readonly law: string;
  readonly sure: 'calibrated' | 'computed' | 'assumed';
}

const written = z.strictObject({
  name: z.string(),
  part: z.string(),
  unit: z.enum(unitNames),
  value: z.number(),
  low: z.number().optional(),
  high: z.number().optional(),
  limit: z.number().optional(),
  limitIs: z.enum(['most', 'least']).optional(),
  law: z.string(),
  sure: z.enum(['calibrated', 'computed', 'assumed']),
}) as z.ZodType<Measure>;

/** Its form in files: numbers in the measure's own unit. */
export const MeasureFile = z.codec(written, z.custom<Measure>(), {
  decode: (measure) => rescale(measure, toSi),
  encode: (measure) => rescale(measure, fromSi),
});

const rescale = (measure: Measure, convert: (value: number, unit: Unit) => number): Measure =>
  rescaled(measure, ['value', 'low', 'high', 'limit'], measure.unit, convert);

/** Value over limit, 1 at the limit; undefined where there is none. */
export function shareOfLimit({ value, limit, limitIs }: Measure): number | undefined {
  if (limit === undefined) return undefined;
  return limitIs === 'least' ? limit / value : value / limit;
}
