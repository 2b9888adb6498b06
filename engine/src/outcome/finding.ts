import { z } from 'zod';
import { rescaled, unitNames } from '../units/rescale.ts';
import { fromSi, toSi, type Unit } from '../units/unit.ts';

/**
 * Something a person should know. The bar goes on; the record says what, how much, and what would mend it.
 *
 * level     outside: a limit is crossed. near: over 90 % of a limit, or the range of the value reaches it.
 *           note: an assumption, a law used outside its validity, a calibration that is missing.
 * check     stable name of the check, kebab-case: 'bite-angle', 'furnace-uniformity'.
 * text      first sentence: what, value with unit, limit. Quiet words; never "error", "warning" or "please".
 * advice    second sentence: what to change, by how much, where; says so when no single setting helps.
 * value, limit   SI inside, in `unit` in files.
 * stop      the line must not be run like this: `run --strict` then ends with exit code 1.
 * setting   path in the plan file of the setting that the advice names: 'settings.passes.3.gapMm'.
 */
export interface Finding {
  readonly level: 'outside' | 'near' | 'note';
  readonly check: string;
  readonly text: string;
  readonly advice: string;
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: Unit;
  readonly stop?: boolean;
  readonly setting?: string;
}

const written = z.strictObject({
  level: z.enum(['outside', 'near', 'note']),
  check: z.string(),
  text: z.string(),
  advice: z.string(),
  value: z.number().optional(),
  limit: z.number().optional(),
  unit: z.enum(unitNames).optional(),
  stop: z.boolean().optional(),
  setting: z.string().optional(),
}) as z.ZodType<Finding>;

/** Its form in files: value and limit in the finding's own unit. */
export const FindingFile = z.codec(written, z.custom<Finding>(), {
  decode: (finding) => rescale(finding, toSi),
  encode: (finding) => rescale(finding, fromSi),
});

const rescale = (finding: Finding, convert: (value: number, unit: Unit) => number): Finding =>
  finding.unit ? rescaled(finding, ['value', 'limit'], finding.unit, convert) : finding;
