import fc from 'fast-check';

type Place = readonly (string | number)[];

/** Every place in a JSON value where something stands. */
function placesIn(value: unknown, at: Place = []): Place[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [
    at,
    ...Object.entries(value).flatMap(([key, part]) =>
      placesIn(part, [...at, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

/** Ways to damage one place: gone, of another kind, out of range, slightly off, or something nobody expects. */
const damage = fc.oneof(
  fc.constant({ kind: 'remove' } as const),
  fc.record({ kind: fc.constant('scale' as const), factor: fc.double({ min: 0.5, max: 2, noNaN: true }) }),
  fc.record({ kind: fc.constant('shift' as const), by: fc.double({ min: -50, max: 50, noNaN: true }) }),
  fc.record({
    kind: fc.constant('replace' as const),
    by: fc.oneof(
      fc.constantFrom(
        null,
        '',
        'x',
        true,
        [],
        {},
        0,
        -1,
        1e308,
        -1e308,
        5e-324,
        Number.NaN,
        Number.POSITIVE_INFINITY,
      ),
      fc.double(),
      fc.string({ maxLength: 12 }),
    ),
  }),
);

export const damages = (content: unknown) => {
  const places = placesIn(content);
  const numbers = places.filter((place) => typeof valueAt(content, place) === 'number');
  // Half of the blows hit numbers, so that many damaged plans still pass the door and reach the models.
  const place = fc.oneof(fc.constantFrom(...places), fc.constantFrom(...numbers));
  return fc.array(fc.record({ place, damage }), { minLength: 1, maxLength: 3 });
};

type Blow = { readonly place: Place; readonly damage: { kind: string; factor?: number; by?: unknown } };

/** A copy of the content with the blows dealt. */
export function damaged(content: unknown, blows: readonly Blow[]): unknown {
  let result = structuredClone(content);
  for (const { place, damage: blow } of blows) result = strike(result, place, blow);
  return result;
}

function strike(value: unknown, place: Place, blow: Blow['damage']): unknown {
  if (place.length === 0) return blow.kind === 'replace' ? blow.by : value;
  const parent = valueAt(value, place.slice(0, -1));
  if (typeof parent !== 'object' || parent === null) return value;
  const key = place[place.length - 1];
  const box = parent as Record<string | number, unknown>;
  if (blow.kind === 'remove') {
    if (Array.isArray(parent)) parent.splice(Number(key), 1);
    else delete box[key];
  } else if (blow.kind === 'replace') box[key] = blow.by;
  else if (typeof box[key] === 'number')
    box[key] = blow.kind === 'scale' ? box[key] * (blow.factor ?? 1) : box[key] + Number(blow.by);
  return value;
}

function valueAt(value: unknown, place: Place): unknown {
  return place.reduce<unknown>(
    (at, key) =>
      typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[key] : undefined,
    value,
  );
}
