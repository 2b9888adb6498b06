import type { Finding } from '../outcome/finding.ts';
import { print, toSi, type Unit, units } from '../units/unit.ts';

/** How far a number may be trusted, in words that are printed as they stand. */
export type Status =
  | 'read in a published text'
  | 'from memory, unconfirmed'
  | 'computed from exact theory'
  | 'assumed, no source';

/** Where a law's author saw it hold. `unit` is the unit that `low` and `high` are written in. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
}

/** Bounds by the name of the input: 'temperature', 'strain', 'rate', 'carbon'. */
export type Validity = Readonly<Record<string, Bounds>>;

/** What every law says about itself. Beyond its validity a law still answers, by the extension its docstring states. */
export interface Law {
  readonly name: string;
  readonly source: string;
  readonly status: Status;
  readonly validity: Validity;
}

/**
 * One note for each input outside the law's validity; empty when all is well. Inputs the law sets no bounds for are
 * not looked at.
 *
 * at   inputs by name, SI (°C for temperatures): outsideValidity(law, { temperature: 1230, rate: 40 }).
 */
export function outsideValidity(law: Law, at: Readonly<Record<string, number>>): readonly Finding[] {
  return Object.entries(law.validity).flatMap(([input, bounds]) => {
    const value = at[input];
    const limit = value === undefined ? undefined : crossed(value, bounds);
    return value === undefined || limit === undefined ? [] : [note(law, input, value, limit, bounds)];
  });
}

function crossed(value: number, { low, high, unit }: Bounds): number | undefined {
  if (value < toSi(low, unit)) return toSi(low, unit);
  return value > toSi(high, unit) ? toSi(high, unit) : undefined;
}

function note(law: Law, input: string, value: number, limit: number, { low, high, unit }: Bounds): Finding {
  const range = `${low} to ${high} ${units[unit].label}`.trim();
  return {
    level: 'note',
    check: 'law-validity',
    text: `${law.name} is used at a ${input} of ${print(value, unit)}, outside its range ${range}.`,
    advice: 'The value extends the law; compare it with a reading from the mill before relying on it.',
    value,
    limit,
    unit,
  };
}
