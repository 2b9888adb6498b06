import { z } from 'zod';
import { type Suffix, type Unit, units } from './unit.ts';

/**
 * One declaration gives the type, the limits, the units, the documentation and the file form of a group of values.
 * In a file the key carries the unit (`gapMm: 24.4`); inside, the same value is `gap: 0.0244`, in SI.
 *
 *     const Gap = group({ gap: quantity('mm', 'Gap between the rolls', 2, 400) });
 *     Gap.parse({ gapMm: 24.4 })  →  { gap: 0.0244 }        z.encode(Gap, …) goes back
 */
export function group<S extends Shape>(shape: S, about?: string) {
  const file = z.strictObject(fileShape(shape)) as z.ZodType<FileOf<S>, FileOf<S>>;
  const inside = z.custom<InsideOf<S>>();
  const codec = z.codec(about ? file.describe(about) : file, inside as z.ZodType<InsideOf<S>, InsideOf<S>>, {
    decode: (written) => rename(shape, written as Values, 'decode') as InsideOf<S>,
    encode: (values) => rename(shape, values as Values, 'encode') as FileOf<S>,
  });
  return Object.assign(codec, { shape });
}

/** The same group with some of its values left out, for a file in which they are said once elsewhere. */
export function without<S extends Shape, K extends keyof S & string>(
  from: { readonly shape: S },
  ...keys: K[]
) {
  const kept = Object.entries(from.shape).filter(([key]) => !(keys as string[]).includes(key));
  return group(Object.fromEntries(kept) as Omit<S, K>);
}

/** One of several groups, told apart by a literal under `key`: groove families, stand kinds. */
export function choice<O extends readonly z.ZodType[]>(
  key: string,
  options: O,
): z.ZodType<z.output<O[number]>, z.input<O[number]>> {
  // zod's own types ask for literals that a codec hides; at run time it finds them.
  return z.discriminatedUnion(key, options as never) as never;
}

/** A number with a unit, a title a technologist would use, and the widest range that makes sense (in that unit). */
export function quantity<U extends Unit>(
  unit: U,
  title: string,
  min: number,
  max: number,
): Quantity<U, 'one'> {
  return { kind: 'quantity', form: 'one', unit, title, min, max };
}

/** A row of numbers that share a unit: roller offsets, zone temperatures. */
export const quantities = <U extends Unit>(
  unit: U,
  title: string,
  min: number,
  max: number,
): Quantity<U, 'row'> => ({
  ...quantity(unit, title, min, max),
  form: 'row',
});

/** A number that may be left out; `leftOut` says what a form shows in its place. */
export const optionalQuantity = <U extends Unit>(
  unit: U,
  title: string,
  min: number,
  max: number,
  leftOut = 'as drawn',
): Quantity<U, 'optional'> => ({ ...quantity(unit, title, min, max), form: 'optional', leftOut });

export interface Quantity<U extends Unit = Unit, F extends Form = Form> {
  readonly kind: 'quantity';
  readonly form: F;
  readonly unit: U;
  readonly title: string;
  readonly min: number;
  readonly max: number;
  readonly leftOut?: string;
}

type Form = 'one' | 'row' | 'optional';
export type Shape = Readonly<Record<string, Quantity | z.ZodType>>;
type Values = Record<string, unknown>;

type OptionalKeys<S> = {
  [K in keyof S]: S[K] extends Quantity<Unit, 'optional'> ? K : S[K] extends z.ZodOptional ? K : never;
}[keyof S];
type Key<K, Q> = Q extends Quantity<infer U> ? `${K & string}${Suffix<U>}` : K;
type Inside<Q> =
  Q extends Quantity<Unit, 'row'>
    ? readonly number[]
    : Q extends Quantity
      ? number
      : Q extends z.ZodType
        ? z.output<Q>
        : never;
type File<Q> =
  Q extends Quantity<Unit, 'row'>
    ? readonly number[]
    : Q extends Quantity
      ? number
      : Q extends z.ZodType
        ? z.input<Q>
        : never;

export type InsideOf<S extends Shape> = Flat<
  { readonly [K in Exclude<keyof S, OptionalKeys<S>>]: Inside<S[K]> } & {
    readonly [K in OptionalKeys<S>]?: Exclude<Inside<S[K]>, undefined>;
  }
>;
export type FileOf<S extends Shape> = Flat<
  { readonly [K in Exclude<keyof S, OptionalKeys<S>> as Key<K, S[K]>]: File<S[K]> } & {
    readonly [K in OptionalKeys<S> as Key<K, S[K]>]?: Exclude<File<S[K]>, undefined>;
  }
>;
type Flat<T> = { [K in keyof T]: T[K] } & {};

export const isQuantity = (entry: Quantity | z.ZodType): entry is Quantity =>
  (entry as Quantity).kind === 'quantity';

/** The key under which a value stands in a file. */
export const fileKey = (key: string, entry: Quantity | z.ZodType): string =>
  isQuantity(entry) ? key + units[entry.unit].suffix : key;

function fileShape(shape: Shape): Record<string, z.ZodType> {
  return Object.fromEntries(
    Object.entries(shape).map(([key, entry]) => [
      fileKey(key, entry),
      isQuantity(entry) ? numberIn(entry) : entry,
    ]),
  );
}

function numberIn(entry: Quantity): z.ZodType {
  const one = z.number().min(entry.min).max(entry.max);
  const meta = { title: entry.title, unit: units[entry.unit].label };
  if (entry.form === 'row') return z.array(one).meta(meta);
  return entry.form === 'optional' ? one.optional().meta(meta) : one.meta(meta);
}

function rename(shape: Shape, from: Values, way: 'decode' | 'encode'): Values {
  const to: Values = {};
  for (const [key, entry] of Object.entries(shape)) {
    const [source, target] = way === 'decode' ? [fileKey(key, entry), key] : [key, fileKey(key, entry)];
    const value = from[source];
    if (value !== undefined) to[target] = isQuantity(entry) ? scale(value, entry.unit, way) : value;
  }
  return to;
}

function scale(value: unknown, unit: Unit, way: 'decode' | 'encode'): unknown {
  if (Array.isArray(value)) return value.map((each) => scale(each, unit, way));
  const si = units[unit].si;
  // 14 digits: what was written comes back as it was written, without the dust of the conversion.
  return way === 'decode' ? (value as number) * si : Number(((value as number) / si).toPrecision(14));
}
