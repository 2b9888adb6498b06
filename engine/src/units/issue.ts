import type { z } from 'zod';
import { units } from './unit.ts';

/** One thing that is wrong with an input, in words a person can act on. */
export interface Issue {
  /** Where, as in the file: 'settings.passes.3.gapMm'; empty for the whole file. */
  readonly path: string;
  /** What stands there; absent where something is missing. */
  readonly value?: unknown;
  /** Unit of the value and the limit, as printed: 'mm'. */
  readonly unit?: string;
  /** What is allowed: '2 to 400', 'one of A, B', 'a number'. */
  readonly limit: string;
  readonly message: string;
}

/** Every issue that a schema found in an input, none twice. */
export function issuesOf(error: z.ZodError, input: unknown): Issue[] {
  const issues = error.issues.flatMap((issue) => flatten(issue)).map((issue) => describe(issue, input));
  const seen = new Set<string>();
  return issues.filter(({ path, message }) => {
    const key = `${path}: ${message}`;
    return !seen.has(key) && seen.add(key);
  });
}

type ZodIssue = z.core.$ZodIssue;

/** A union reports per option; the option that came nearest is the one the writer meant. */
function flatten(issue: ZodIssue): ZodIssue[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({ ...issue, keys: [key], path: [...issue.path, key] }));
  }
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [issue];
  const nearest = [...issue.errors].sort((a, b) => a.length - b.length)[0];
  return nearest.flatMap((inner) => flatten({ ...inner, path: [...issue.path, ...inner.path] }));
}

function describe(issue: ZodIssue, input: unknown): Issue {
  const path = issue.path.map(String).join('.');
  const value = valueAt(input, issue.path);
  const unit = unitOf(issue.path);
  const limit = limitOf(issue);
  return {
    path,
    ...(value === undefined ? {} : { value }),
    ...(unit ? { unit } : {}),
    limit,
    message: `${path || 'the file'} ${found(value, unit)}; allowed: ${withUnit(limit, unit)}`,
  };
}

function found(value: unknown, unit: string | undefined): string {
  if (value === undefined) return 'is missing';
  return typeof value === 'number' && unit ? `is ${value} ${unit}` : `is ${short(value)}`;
}

/** '15 or less' becomes '15 mm or less'. */
const withUnit = (limit: string, unit: string | undefined): string =>
  unit ? limit.replace(/^(-?[\d.e+-]+)(?= or )/, `$1 ${unit}`) : limit;

function limitOf(issue: ZodIssue): string {
  switch (issue.code) {
    case 'too_small':
      return `${issue.minimum} or more${ofWhat(issue.origin)}`;
    case 'too_big':
      return `${issue.maximum} or less${ofWhat(issue.origin)}`;
    case 'invalid_type':
      return trade(issue.expected);
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      return 'a known family, kind or form';
    case 'unrecognized_keys':
      return 'nothing: this entry is not known here';
    default:
      return issue.message ?? 'another value';
  }
}

const ofWhat = (origin: string): string =>
  origin === 'array' ? ' entries' : origin === 'string' ? ' characters' : '';

const trade = (expected: string): string =>
  ({
    number: 'a number',
    string: 'a text',
    object: 'a group of values',
    array: 'a list',
    int: 'a whole number',
  })[expected] ?? expected;

const short = (value: unknown): string => {
  const text =
    typeof value === 'object' && value !== null
      ? Array.isArray(value)
        ? 'a list'
        : 'a group'
      : String(value);
  return text.length > 40 ? `${text.slice(0, 37)}…` : text;
};

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let at: unknown = input;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[key];
  }
  return at;
}

/** The unit that ends the last key of a path: `gapMm` is in mm. The longest suffix wins: `Mm2` over `M`. */
function unitOf(path: readonly PropertyKey[]): string | undefined {
  const key = path.findLast((part) => typeof part === 'string' && !/^\d+$/.test(part)) as string | undefined;
  if (!key) return undefined;
  const fitting = Object.values(units).filter(({ suffix }) => suffix !== '' && key.endsWith(suffix));
  return fitting.sort((a, b) => b.suffix.length - a.suffix.length)[0]?.label;
}
