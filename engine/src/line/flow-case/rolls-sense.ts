import { rollProfile } from '../../phenomena/metal-flow/roll-profile.ts';
import type { Outline } from '../../section/outline.ts';
import type { Issue } from '../../units/issue.ts';
import { type CaseRoll, pathOfRoll } from './case-roll.ts';
import type { FlowCase } from './flow-case.ts';
import {
  across,
  beyond,
  bitesInto,
  imageOf,
  isUpright,
  opposite,
  type RollEdge,
  rollsTouch,
} from './roll-geometry.ts';
import { drawnWithin, repeatedPoints, tidyMm } from './section-sense.ts';

/** A roll of the file with its number there. */
export interface NumberedRoll {
  readonly number: number;
  readonly roll: CaseRoll;
}

interface PlacedRoll extends NumberedRoll {
  readonly edge: RollEdge;
}

/** What is wrong with one roll for itself. */
export function senseOfRoll({ number, roll }: NumberedRoll): Issue[] {
  const path = `rolls.${number}`;
  const rows = `${path}.profile.${roll.profile.shape === 'outline' ? 'rows' : 'pointsMm'}`;
  const outline = pathOfRoll(roll);
  const drawn = [...drawnWithin(outline, rows), ...repeatedPoints(outline, rows, false)];
  if (drawn.length > 0) return [...oneDrive(roll, path), ...drawn];
  return [...oneDrive(roll, path), ...axisBehind(roll, path)];
}

function oneDrive({ turning, turningRadPerS, idle }: CaseRoll, path: string): Issue[] {
  const said = [turning, turningRadPerS, idle].filter((value) => value !== undefined).length;
  if (said === 1) return [];
  const limit = 'one of turningRpm, turningRadPerS, idle';
  return [
    {
      path,
      limit,
      message: `${path} says ${said === 0 ? 'not' : 'twice'} how the roll turns; allowed: ${limit}`,
    },
  ];
}

/** The whole edge lies between the axis and the bar. */
function axisBehind(roll: CaseRoll, path: string): Issue[] {
  const way = beyond(roll.side);
  const farthest = Math.max(...across(edgeOf(roll)).map((value) => way * value));
  if (way * roll.axis > farthest + leastRadius) return [];
  const limit = `${way > 0 ? 'above' : 'below'} ${tidyMm(way * farthest)} by a roll's radius`;
  const value = tidyMm(roll.axis);
  const message = `${path}.axisMm is ${value} mm; allowed: ${limit}, behind the profile of a ${roll.side} roll`;
  return [{ path: `${path}.axisMm`, value, unit: 'mm', limit, message }];
}

/** m. */
const leastRadius = 0.01;

const edgeOf = (roll: CaseRoll): RollEdge => ({ side: roll.side, points: rollProfile(pathOfRoll(roll)) });

/** What is wrong with the rolls together, and with the bar between them. */
export function senseOfRolls(
  rolls: readonly NumberedRoll[],
  symmetry: FlowCase['symmetry'],
  outline: Outline | undefined,
): Issue[] {
  const placed = rolls.map((each) => ({ ...each, edge: edgeOf(each.roll) }));
  const sides = sidesOnce(placed, symmetry);
  if (sides.length > 0) return sides;
  return [
    ...facing(placed, symmetry),
    ...oneDriven(placed),
    ...touching(placed, symmetry),
    ...(outline ? missing(placed, outline) : []),
  ];
}

function sidesOnce(rolls: readonly PlacedRoll[], symmetry: FlowCase['symmetry']): Issue[] {
  const allowed = {
    none: ['top', 'bottom', 'left', 'right'],
    half: ['top', 'left', 'right'],
    quarter: ['top', 'right'],
  }[symmetry];
  return rolls.flatMap(({ number, roll: { side } }, i): Issue[] => {
    const path = `rolls.${number}.side`;
    const twice = rolls.findIndex(({ roll }) => roll.side === side) < i;
    if (allowed.includes(side) && !twice) return [];
    const limit = twice ? 'a side used once' : `one of ${allowed.join(', ')}`;
    const why = twice ? 'used before' : `mirrored from the other side with symmetry ${symmetry}`;
    return [{ path, value: side, limit, message: `${path} is ${side}, ${why}; allowed: ${limit}` }];
  });
}

/** A bar is squeezed between two rolls: at least one pair must face each other, images counted. */
function facing(rolls: readonly PlacedRoll[], symmetry: FlowCase['symmetry']): Issue[] {
  const sides = withImages(rolls, symmetry).map(({ side }) => side);
  if (sides.some((side) => sides.includes(opposite[side]))) return [];
  const message =
    'rolls: no two rolls face each other; allowed: 2 to 4 rolls, top and bottom or left and right';
  return [{ path: 'rolls', value: rolls.length, limit: '2 rolls or more that face each other', message }];
}

function oneDriven(rolls: readonly PlacedRoll[]): Issue[] {
  if (rolls.length === 0 || rolls.some(({ roll }) => !roll.idle)) return [];
  const message = 'rolls: none is driven; give one turningRpm or turningRadPerS';
  return [{ path: 'rolls', limit: 'one driven roll or more', message }];
}

function touching(rolls: readonly PlacedRoll[], symmetry: FlowCase['symmetry']): Issue[] {
  const issue = (a: number, what: string): Issue => {
    const message = `rolls.${a}.profile touches ${what} in the exit plane; open the gap`;
    return { path: `rolls.${a}.profile`, limit: 'a gap between the rolls', message };
  };
  const own = rolls.flatMap(({ number, edge }) =>
    imageLines(edge, symmetry).some((line) => rollsTouch(edge, imageOf(edge, line)))
      ? [issue(number, 'its mirror image')]
      : [],
  );
  const pairs = rolls.flatMap((a, i) => rolls.slice(i + 1).map((b) => [a, b] as const));
  const met = pairs.filter(([a, b]) => a.edge.side !== b.edge.side && rollsTouch(a.edge, b.edge));
  return [...own, ...met.map(([a, b]) => issue(a.number, `rolls.${b.number} (${b.roll.name})`))];
}

/** Lines of symmetry that mirror a roll to the other side of the bar: y = 0 the top roll, x = 0 the right one. */
const imageLines = ({ side }: RollEdge, symmetry: FlowCase['symmetry']): ('x' | 'y')[] => {
  if (symmetry === 'none') return [];
  if (!isUpright(side)) return ['y'];
  return symmetry === 'quarter' ? ['x'] : [];
};

const withImages = (rolls: readonly PlacedRoll[], symmetry: FlowCase['symmetry']): RollEdge[] =>
  rolls.flatMap(({ edge }) => [edge, ...imageLines(edge, symmetry).map((line) => imageOf(edge, line))]);

function missing(rolls: readonly PlacedRoll[], outline: Outline): Issue[] {
  return rolls
    .filter(({ edge }) => !bitesInto(edge, outline))
    .map(({ number, roll }) => ({
      path: `rolls.${number}`,
      limit: 'a roll that reaches the bar',
      message: `rolls.${number} (${roll.name}) does not reach the bar; move its profile towards it, or leave the roll out`,
    }));
}
