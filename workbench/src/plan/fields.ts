import { fileKey, isQuantity, type Quantity, type Shape } from '@bloomrail/engine/units/group';
import { type Unit, units } from '@bloomrail/engine/units/unit';
import type { Json } from './plan-file.ts';

/** One value of a plan that a person can move, as the page shows it: numbers in the unit of the file. */
export type Field = NumberField | ChoiceField;

/** What stands in the file; true and false are shown as on and off. */
type Choice = string | number | boolean;

interface Common {
  /** Where it stands in the plan file: 'settings.passes.3.gapMm'. */
  readonly path: string;
  readonly title: string;
}

export interface NumberField extends Common {
  readonly kind: 'number';
  readonly unit: Unit;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number | undefined;
  /** What stands there while there is no value. */
  readonly leftOut?: string;
}

export interface ChoiceField extends Common {
  readonly kind: 'choice';
  readonly options: readonly Choice[];
  readonly value: Choice;
}

/** What this file needs of a zod type: its group shape, its definition, its title. */
export interface Schema {
  readonly shape?: unknown;
  readonly meta?: () => { readonly title?: string } | undefined;
  readonly _zod?: { readonly def: object };
}

interface Definition {
  readonly type: string;
  readonly element?: Schema;
  readonly innerType?: Schema;
  readonly options?: readonly Schema[];
  readonly entries?: Record<string, string>;
  readonly discriminator?: string;
}

/** The movable values of a settings group, in the order they are declared, for the file form `values` at `path`. */
export function fieldsOf(schema: Schema, values: Json | undefined, path: string): Field[] {
  const shape = groupShape(schema);
  if (!shape || !isObject(values)) return [];
  return Object.entries(shape).flatMap(([key, entry]) => {
    const written = fileKey(key, entry);
    const at = `${path}.${written}`;
    return isQuantity(entry)
      ? numbers(entry, values[written], at)
      : inner(entry as Schema, values[written], at, key);
  });
}

function groupShape({ shape }: Schema): Shape | undefined {
  return shape && typeof shape === 'object' ? (shape as Shape) : undefined;
}

const isObject = (value: Json | undefined): value is Record<string, Json> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function numbers(entry: Quantity, value: Json | undefined, path: string): NumberField[] {
  const { unit, min, max, title, leftOut } = entry;
  const step = 10 ** -units[unit].decimals;
  const field = { kind: 'number' as const, unit, min, max, step, ...(leftOut ? { leftOut } : {}) };
  if (!Array.isArray(value))
    return [{ ...field, path, title, value: typeof value === 'number' ? value : undefined }];
  return value.map((each, i) => ({
    ...field,
    path: `${path}.${i}`,
    title: `${title}, ${i + 1}`,
    value: each,
  }));
}

function inner(schema: Schema, value: Json | undefined, path: string, key: string): Field[] {
  const def = schema._zod?.def as Definition | undefined;
  if (groupShape(schema)) return fieldsOf(schema, value, path);
  const title = schema.meta?.()?.title ?? key;
  switch (def?.type) {
    case 'optional':
      return value === undefined || !def.innerType ? [] : inner(def.innerType, value, path, key);
    case 'enum':
      return [choiceOf(path, title, Object.values(def.entries ?? {}), value)];
    case 'boolean':
      return [choiceOf(path, title, [true, false], value)];
    case 'number':
      return [wholeNumber(schema, value, path, title)];
    case 'array':
      return listed(def.element, value, path, key);
    case 'union':
      return def.discriminator
        ? fieldsOf(chosen(def, value) ?? {}, value, path)
        : [choiceOf(path, title, (def.options ?? []).flatMap(literals), value)];
    default:
      return [];
  }
}

const choiceOf = (
  path: string,
  title: string,
  options: readonly Choice[],
  value: Json | undefined,
): ChoiceField => ({
  kind: 'choice',
  path,
  title,
  options,
  value: value as Choice,
});

const literals = (schema: Schema | undefined): readonly Choice[] =>
  ((schema?._zod?.def ?? {}) as { values?: readonly Choice[] }).values ?? [];

function wholeNumber(schema: Schema, value: Json | undefined, path: string, title: string): NumberField {
  const { minValue, maxValue } = schema as { minValue?: number; maxValue?: number };
  return {
    kind: 'number',
    unit: 'one',
    step: 1,
    path,
    title,
    min: Math.max(minValue ?? 0, -1e6),
    max: Math.min(maxValue ?? 1e6, 1e6),
    value: value as number,
  };
}

function listed(element: Schema | undefined, values: Json | undefined, path: string, key: string): Field[] {
  if (!element || !Array.isArray(values)) return [];
  return values.flatMap((value, i) =>
    inner(element, value, `${path}.${i}`, key).map((field) => ({
      ...field,
      title: `${field.title}, ${i + 1}`,
    })),
  );
}

/** The option of a `choice` whose literal stands in the file. */
function chosen(
  { options = [], discriminator = '' }: Definition,
  value: Json | undefined,
): Schema | undefined {
  if (!isObject(value)) return undefined;
  return options.find((option) => {
    const literal = groupShape(option)?.[discriminator] as Schema | undefined;
    return literals(literal).includes(value[discriminator] as Choice);
  });
}

/** The schema that stands at a path inside a group: names lead into groups, numbers into lists. */
export function schemaAt(schema: Schema, keys: readonly string[]): Schema | undefined {
  return keys.reduce<Schema | undefined>((at, key) => {
    if (!at) return undefined;
    const shape = groupShape(at);
    return shape ? (shape[key] as Schema | undefined) : (at._zod?.def as Definition | undefined)?.element;
  }, schema);
}
