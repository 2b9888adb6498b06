import { profileNames } from '../section/profile-library.ts';
import { gradeNames } from '../steel/grades.ts';
import type { Issue } from '../units/issue.ts';
import type { Plan } from './plan.ts';

/** What each value alone cannot tell: names that lead nowhere, lists that do not fit each other. Every issue at once. */
export function senseOf(plan: Plan): Issue[] {
  const { order, mill, settings } = plan;
  return [
    ...named('order.profile', order.profile, profileNames),
    ...named('order.grade', order.grade, gradeNames),
    ...ordered(plan),
    ...sameCount(
      'settings.furnace.zones',
      settings.furnace.zones.length,
      mill.furnace.zones.length,
      'zones of the furnace',
    ),
    ...distinct(
      'mill.stands',
      mill.stands.map(({ code }) => code),
    ),
    ...distinct(
      'settings.passes',
      settings.passes.map(({ code }) => code),
    ),
    ...settings.passes.flatMap((pass, i) => passSense(plan, pass, `settings.passes.${i}`)),
    ...grooveProfiles(plan),
    ...offsetCounts(plan),
    ...corner(plan),
  ];
}

function named(path: string, value: string, known: readonly string[]): Issue[] {
  if (known.includes(value)) return [];
  const limit = `one of ${known.join(', ')}`;
  return [{ path, value, limit, message: `${path} is ${value || 'empty'}; allowed: ${limit}` }];
}

function ordered({ order }: Plan): Issue[] {
  if (order.rails.some(({ count }) => count > 0)) return [];
  const message = 'order.rails: no rail is ordered; give one length a count of 1 or more';
  return [{ path: 'order.rails', value: 0, limit: '1 rail or more', message }];
}

function sameCount(path: string, count: number, wanted: number, of: string): Issue[] {
  if (count === wanted) return [];
  return [
    {
      path,
      value: count,
      limit: `${wanted} entries`,
      message: `${path} has ${count} entries; the ${of} are ${wanted}`,
    },
  ];
}

function distinct(path: string, codes: readonly string[]): Issue[] {
  return codes.flatMap((code, i) =>
    codes.indexOf(code) === i
      ? []
      : [
          {
            path: `${path}.${i}.code`,
            value: code,
            limit: 'a code used once',
            message: `${path}.${i}.code is ${code}, used before`,
          },
        ],
  );
}

function passSense({ mill }: Plan, pass: Plan['settings']['passes'][number], path: string): Issue[] {
  const stand = mill.stands.find(({ code }) => code === pass.stand);
  if (!stand)
    return named(
      `${path}.stand`,
      pass.stand,
      mill.stands.map(({ code }) => code),
    );
  return named(
    `${path}.groove`,
    pass.groove,
    stand.grooves.map(({ name }) => name),
  );
}

function grooveProfiles({ mill }: Plan): Issue[] {
  return mill.stands.flatMap(({ grooves }, s) =>
    grooves.flatMap((groove, g) =>
      groove.family === 'finisher'
        ? named(`mill.stands.${s}.grooves.${g}.profile`, groove.profile, profileNames)
        : [],
    ),
  );
}

/** Even rollers are the set ones: half of the rollers of each machine, rounded down. */
function offsetCounts({ mill, settings }: Plan): Issue[] {
  const { heightOffsets, sideOffsets } = settings.straighteners;
  return [
    ...sameCount(
      'settings.straighteners.heightOffsetsMm',
      heightOffsets.length,
      Math.floor(mill.straighteners.height.rollers / 2),
      'even rollers of the height plane',
    ),
    ...sameCount(
      'settings.straighteners.sideOffsetsMm',
      sideOffsets.length,
      Math.floor(mill.straighteners.side.rollers / 2),
      'even rollers of the side plane',
    ),
  ];
}

function corner({ bloom }: Plan): Issue[] {
  const most = Math.min(bloom.height, bloom.width) / 2;
  if (bloom.cornerRadius < most) return [];
  return [
    {
      path: 'bloom.cornerRadiusMm',
      value: bloom.cornerRadius * 1e3,
      unit: 'mm',
      limit: `less than ${most * 1e3}`,
      message: `bloom.cornerRadiusMm is ${bloom.cornerRadius * 1e3} mm; allowed: less than half the shorter side, ${most * 1e3} mm`,
    },
  ];
}
