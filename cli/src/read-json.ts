import { readFileSync } from 'node:fs';
import type { Issue } from '@bloomrail/engine/units/issue';

export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** The content of a JSON file, or what is wrong with it in the same form as every other issue. */
export function readJson(file: string): Reading<unknown> {
  const text = readText(file);
  if (!text.ok) return text;
  try {
    return { ok: true, value: JSON.parse(text.value) };
  } catch (cause) {
    return refuse(file, 'JSON', `${file} is not JSON: ${(cause as Error).message}`);
  }
}

export function readText(file: string): Reading<string> {
  try {
    return { ok: true, value: readFileSync(file, 'utf8') };
  } catch (cause) {
    return refuse(file, 'a file that can be read', `${file} cannot be read: ${(cause as Error).message}`);
  }
}

const refuse = (path: string, limit: string, message: string): Reading<never> => ({
  ok: false,
  issues: [{ path, limit, message }],
});
