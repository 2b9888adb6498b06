import { profileNames } from '../section/profile-library.ts';
import { gradeNames } from '../steel/grades.ts';
import type { Issue } from '../units/issue.ts';

/**
 * What no value alone can tell: names that lead nowhere, lists that do not fit each other. Looks at the file as it is
 * written and skips what is missing or of another kind, so that these issues come together with all others.
 */
export function senseOf(content: unknown): Issue[] {
  const plan = at(content);
  const [stands, passes] = [plan('mill', 'stands').list(), plan('settings', 'passes').list()];
  return [
    ...named(plan('order', 'profile'), profileNames),
    ...named(plan('order', 'grade'), gradeNames),
    ...somethingOrdered(plan('order', 'rails')),
    ...sameCount(
      plan('settings', 'furnace', 'zones'),
      plan('mill', 'furnace', 'zones'),
      1,
      'zones of the furnace',
    ),
    ...evenRollers(plan, 'heightOffsetsMm', 'height', 'height plane'),
    ...evenRollers(plan, 'sideOffsetsMm', 'side', 'side plane'),
    ...usedOnce(stands.map((stand) => stand('code'))),
    ...usedOnce(passes.map((pass) => pass('code'))),
    ...passes.flatMap((pass) => standAndGroove(pass, stands)),
    ...stands.flatMap((stand) => finishers(stand)),
    ...roundEnough(plan),
  ];
}

/** A place in the written file: what stands there, and where that is. */
interface Spot {
  (...keys: (string | number)[]): Spot;
  readonly path: string;
  readonly value: unknown;
  readonly list: () => Spot[];
}

function at(value: unknown, path: readonly (string | number)[] = []): Spot {
  const inside = (...keys: (string | number)[]): Spot =>
    at(
      keys.reduce<unknown>(
        (box, key) => (typeof box === 'object' && box !== null ? Reflect.get(box, key) : undefined),
        value,
      ),
      [...path, ...keys],
    );
  const list = () => (Array.isArray(value) ? value.map((_, i) => inside(i)) : []);
  return Object.assign(inside, { path: path.join('.'), value, list });
}

function named({ path, value }: Spot, known: readonly string[]): Issue[] {
  if (typeof value !== 'string' || known.includes(value)) return [];
  const limit = `one of ${known.join(', ')}`;
  return [{ path, value, limit, message: `${path} is ${value || 'empty'}; allowed: ${limit}` }];
}

function somethingOrdered(rails: Spot): Issue[] {
  const counts = rails.list().map((row) => row('count').value);
  if (counts.length === 0 || counts.some((count) => count !== 0)) return [];
  const message = `${rails.path}: no rail is ordered; give one length a count of 1 or more`;
  return [{ path: rails.path, value: 0, limit: '1 rail or more', message }];
}

/** Two lists that go together, the first with `share` entries for each of the second. */
function sameCount(list: Spot, partner: Spot, share: number, of: string): Issue[] {
  if (!Array.isArray(list.value) || !Array.isArray(partner.value)) return [];
  return counted(list, Math.floor(partner.value.length * share), of);
}

/** Even rollers are the set ones: half of the rollers of each machine, rounded down. */
function evenRollers(plan: Spot, offsets: string, machine: string, plane: string): Issue[] {
  const rollers = plan('mill', 'straighteners', machine, 'rollers').value;
  const list = plan('settings', 'straighteners', offsets);
  if (!Array.isArray(list.value) || typeof rollers !== 'number') return [];
  return counted(list, Math.floor(rollers / 2), `even rollers of the ${plane}`);
}

function counted(list: Spot, wanted: number, of: string): Issue[] {
  const count = list.list().length;
  if (count === wanted) return [];
  const message = `${list.path} has ${count} entries; the ${of} are ${wanted}`;
  return [{ path: list.path, value: count, limit: `${wanted} entries`, message }];
}

function usedOnce(codes: readonly Spot[]): Issue[] {
  return codes
    .filter(
      ({ value }, i) => typeof value === 'string' && codes.findIndex((code) => code.value === value) < i,
    )
    .map(({ path, value }) => ({
      path,
      value,
      limit: 'a code used once',
      message: `${path} is ${value}, used before`,
    }));
}

function standAndGroove(pass: Spot, stands: readonly Spot[]): Issue[] {
  const stand = stands.find((each) => each('code').value === pass('stand').value);
  if (!stand) return named(pass('stand'), textsOf(stands.map((each) => each('code'))));
  return named(
    pass('groove'),
    textsOf(
      stand('grooves')
        .list()
        .map((groove) => groove('name')),
    ),
  );
}

const finishers = (stand: Spot): Issue[] =>
  stand('grooves')
    .list()
    .filter((groove) => groove('family').value === 'finisher')
    .flatMap((groove) => named(groove('profile'), profileNames));

const textsOf = (spots: readonly Spot[]): string[] =>
  spots.map(({ value }) => value).filter((value): value is string => typeof value === 'string');

/** The corners of a bloom must leave some side between them. */
function roundEnough(plan: Spot): Issue[] {
  const [radius, height, width] = ['cornerRadiusMm', 'heightMm', 'widthMm'].map((key) => plan('bloom', key));
  if (![radius, height, width].every(({ value }) => typeof value === 'number')) return [];
  const most = Math.min(Number(height.value), Number(width.value)) / 2;
  const value = Number(radius.value);
  if (value < most) return [];
  const limit = `less than ${most}`;
  const message = `${radius.path} is ${value} mm; allowed: less than half the shorter side, ${most} mm`;
  return [{ path: radius.path, value, unit: 'mm', limit, message }];
}
