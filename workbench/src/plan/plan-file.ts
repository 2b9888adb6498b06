/** The plan as it stands in its file: keys carry the unit ('gapMm'), numbers are in that unit. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** What stands at a path like 'settings.passes.3.gapMm'; undefined where the path leads nowhere. */
export function valueAt(json: Json | undefined, path: string): Json | undefined {
  return path.split('.').reduce<Json | undefined>((at, key) => step(at, key), json);
}

function step(at: Json | undefined, key: string): Json | undefined {
  if (at === null || typeof at !== 'object') return undefined;
  return Array.isArray(at) ? at[Number(key)] : (at as Record<string, Json>)[key];
}

/** The same plan with one value changed; everything beside the path is shared with the old plan. */
export function withValueAt(json: Json, path: string, value: Json): Json {
  const [key, ...rest] = path.split('.');
  const inner = rest.length ? withValueAt(step(json, key) ?? {}, rest.join('.'), value) : value;
  if (Array.isArray(json)) return json.map((each, i) => (i === Number(key) ? inner : each));
  return { ...(json as Record<string, Json>), [key]: inner };
}
