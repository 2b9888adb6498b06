import type { Bar } from '../../bar/bar.ts';
import type { Finding } from '../../outcome/finding.ts';
import { curvatureOfRise, rise } from '../../phenomena/bending/closed-forms.ts';
import { print } from '../../units/unit.ts';
import type { StraightenersEquipment } from './equipment.ts';
import { type Range, type StraightFacts, worst } from './facts.ts';
import { flatnessLimits, mostPlastified } from './limits.ts';
import type { BothMachines } from './measures.ts';
import type { MachineRecord, RollerRecord } from './record.ts';
import type { StraightenersSettings } from './settings.ts';

type Plane = 'height' | 'side';

/** What a person should know, flatness first. */
export function findingsOf(
  both: BothMachines,
  { heightRange, sideRange, carried }: StraightFacts,
  leaving: Bar,
  settings: StraightenersSettings,
  equipment: StraightenersEquipment,
): Finding[] {
  const limits = flatnessLimits[settings.straightness];
  const height = { plane: 'height' as const, range: heightRange, machine: both.height, carried };
  const side = { plane: 'side' as const, range: sideRange, machine: both.side, carried: 1 };
  return [
    flatnessFinding({ ...height, base: 3, limit: limits.on3m }, settings) ??
      flatnessFinding({ ...height, base: 1, limit: limits.on1m }, settings),
    flatnessFinding({ ...side, base: 1.5, limit: limits.sideways }, settings),
    ...(['height', 'side'] as const).flatMap((plane) => [
      forceFinding(plane, both[plane], equipment[plane].force),
      powerFinding(plane, both[plane], equipment[plane].power),
      plastifiedFinding(plane, both[plane]),
      ...both[plane].rollers
        .filter((each) => !each.touches)
        .map((each) => idleFinding(plane, each, both[plane])),
    ]),
    endsFinding(both, leaving),
    contactNote,
  ].filter((each) => each !== undefined);
}

interface Flatness {
  readonly plane: Plane;
  readonly range: Range;
  readonly machine: MachineRecord;
  /** Share of a change in this machine that is left in the end. */
  readonly carried: number;
  /** m */
  readonly base: number;
  readonly limit: number;
}

function flatnessFinding(flat: Flatness, settings: StraightenersSettings): Finding | undefined {
  const { plane, range, base, limit } = flat;
  const value = rise(Math.abs(range.nominal), base);
  const most = rise(worst(range), base);
  if (most <= limit) return undefined;
  const where = plane === 'height' ? 'Flatness' : 'Side flatness';
  return {
    level: value > limit ? 'outside' : 'near',
    check: `flatness-${plane}`,
    text: `${where} ${print(value, 'mm', 2)} over ${base} m, limit ${print(limit, 'mm', 2)}; range reaches ${print(most, 'mm', 2)}.`,
    advice: flatnessAdvice(flat, settings),
    value,
    limit,
    unit: 'mm',
    setting: settingOf(plane, bestRoller(flat), flat.machine),
  };
}

/** Moves the middle of the range to straight by the settable roller that does it with the least travel. */
function flatnessAdvice(flat: Flatness, settings: StraightenersSettings): string {
  const { plane, range, base, limit, carried } = flat;
  const half = (range.high - range.low) / 2;
  const allowed = curvatureOfRise(limit, base);
  const spread = plane === 'height' ? settings.heightSpread : settings.sideSpread;
  if (half > allowed) {
    const drawn = print((spread * allowed) / half, 'perKm', 1);
    return `No offset alone helps: the spread is too wide. Bring bars in within ±${drawn}, or bend them more at the first rollers.`;
  }
  const roller = bestRoller(flat);
  const slope = roller ? (8 * roller.sensitivity * carried) / flatBase(plane) ** 2 / 1e-4 : 0;
  if (!roller || slope === 0) return 'No roller moves the camber that leaves; check which rollers touch.';
  const change = -(range.low + range.high) / 2 / slope;
  if (Math.abs(change) > farthestAdvice) {
    return `No roller does it alone within ${print(farthestAdvice, 'mm', 0)}: set all offsets anew as a taper, with more bend at the first rollers.`;
  }
  const way = change > 0 ? 'Press roller' : 'Take roller';
  return `${way} ${roller.number} ${change > 0 ? 'in' : 'back'} by ${print(Math.abs(change), 'mm', 2)}: the middle of the range moves to straight.`;
}

/** m: slopes are local; beyond this travel they say nothing. */
const farthestAdvice = 2e-3;

const flatBase = (plane: Plane): number => (plane === 'height' ? 3 : 1.5);

function bestRoller({ machine }: Flatness): RollerRecord | undefined {
  const settable = machine.rollers.filter((each) => each.touches && isSettable(each, machine));
  return settable.reduce<RollerRecord | undefined>(
    (best, each) => (best && Math.abs(best.sensitivity) >= Math.abs(each.sensitivity) ? best : each),
    undefined,
  );
}

/** Even rollers, and the last one where it is odd. */
const isSettable = ({ number }: RollerRecord, { rollers }: MachineRecord): boolean =>
  number % 2 === 0 || number === rollers.length;

function settingOf(plane: Plane, roller: RollerRecord | undefined, machine: MachineRecord): string {
  const group = 'settings.straighteners';
  if (plane === 'height' && roller && roller.number % 2 && roller.number === machine.rollers.length) {
    return `${group}.heightLastMm`;
  }
  return `${group}.${plane}OffsetsMm.${roller && roller.number % 2 === 0 ? roller.number / 2 - 1 : 0}`;
}

function forceFinding(plane: Plane, machine: MachineRecord, limit: number): Finding | undefined {
  const roller = machine.rollers.reduce((most, each) => (each.force > most.force ? each : most));
  if (roller.force <= 0.9 * limit) return undefined;
  const setter = nearestSettable(machine, roller);
  const back = setter.offset * (1 - (0.9 * limit) / roller.force);
  return {
    level: roller.force > limit ? 'outside' : 'near',
    check: `roller-force-${plane}`,
    text: `Roller ${roller.number} of the ${plane} machine presses with ${print(roller.force, 'kN')}, limit ${print(limit, 'kN')}.`,
    advice: `Take roller ${setter.number} back by about ${print(back, 'mm')}, then look at the flatness again.`,
    value: roller.force,
    limit,
    unit: 'kN',
    ...(roller.force > limit ? { stop: true } : {}),
    setting: settingOf(plane, setter, machine),
  };
}

function nearestSettable(machine: MachineRecord, { number }: RollerRecord): RollerRecord {
  const even = machine.rollers.filter((each) => each.number % 2 === 0);
  return even.reduce((best, each) =>
    Math.abs(each.number - number) < Math.abs(best.number - number) ? each : best,
  );
}

function powerFinding(plane: Plane, { power }: MachineRecord, limit: number): Finding | undefined {
  if (power <= 0.9 * limit) return undefined;
  return {
    level: power > limit ? 'outside' : 'near',
    check: `straightener-power-${plane}`,
    text: `Bending takes ${print(power, 'kW')} in the ${plane} machine, drive ${print(limit, 'kW')}; bearings and sliding not counted.`,
    advice: `Slow down to ${((0.9 * limit) / power).toFixed(2)} of the speed.`,
    value: power,
    limit,
    unit: 'kW',
    setting: 'settings.straighteners.speedMPerS',
  };
}

function plastifiedFinding(plane: Plane, machine: MachineRecord): Finding | undefined {
  const roller = machine.rollers.reduce((most, each) => (each.plastified > most.plastified ? each : most));
  if (roller.plastified <= mostPlastified) return undefined;
  const setter = nearestSettable(machine, roller);
  return {
    level: 'note',
    check: `plastified-${plane}`,
    text: `${print(roller.plastified, 'percent', 0)} of the depth are past first yield at roller ${roller.number} of the ${plane} machine; practice stays below ${print(mostPlastified, 'percent', 0)}.`,
    advice: `Take roller ${setter.number} back if the flatness allows it.`,
    value: roller.plastified,
    limit: mostPlastified,
    unit: 'percent',
    setting: settingOf(plane, setter, machine),
  };
}

function idleFinding(plane: Plane, roller: RollerRecord, machine: MachineRecord): Finding {
  return {
    level: 'note',
    check: `roller-idle-${plane}`,
    text: `Roller ${roller.number} of the ${plane} machine does not touch the bar.`,
    advice: 'Press its neighbour in, or run on: the rollers that touch do the work.',
    setting: settingOf(plane, nearestSettable(machine, roller), machine),
  };
}

function endsFinding({ height, side }: BothMachines, { pieces }: Bar): Finding | undefined {
  const ends = Math.max(height.unstraightenedEnd, side.unstraightenedEnd);
  const shortest = Math.min(...pieces);
  if (shortest > 2 * ends) return undefined;
  return {
    level: 'outside',
    check: 'piece-without-straight-part',
    text: `A piece of ${print(shortest, 'm')} is all end: ${print(ends, 'm')} at each end stay as they came.`,
    advice: 'Straighten longer pieces and cut them cold; no setting of the machine helps.',
    value: shortest,
    limit: 2 * ends,
    unit: 'm',
    setting: 'settings.saws.coldLengthsM',
  };
}

const contactNote: Finding = {
  level: 'note',
  check: 'bending-part-only',
  text: 'Stress after straightening is the bending part only: roller contact, which raises foot and head tension, is not in the model.',
  advice: 'Do not hold it against the limit of 250 MPa at the foot; measure by strain gauge or slot.',
};
