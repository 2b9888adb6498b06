import type { Measure } from '../bar/measure.ts';
import type { Finding } from '../outcome/finding.ts';
import type { PassRecord } from '../stations/stands/record.ts';
import { print } from '../units/unit.ts';
import type { Plan } from './plan.ts';
import type { Visit } from './visit.ts';

/**
 * What a stand's last pass shows of the campaign, bar after bar at the plan's rhythm: for how long one bar takes the
 * stand, and what its motor carries over all passes. Nothing for other stops.
 *
 * earlier   visits before this one, in travel order.
 */
export function campaignOf(
  plan: Plan,
  earlier: readonly Visit[],
  visit: Visit,
): { readonly measures: readonly Measure[]; readonly findings: readonly Finding[] } {
  if (!isPass(visit.record) || !isLastOn(plan, visit.record)) return { measures: [], findings: [] };
  const { stand: code } = visit.record;
  const here = [...earlier, visit].map(({ record }) => record).filter(isPass);
  const passes = here.filter(({ stand }) => stand === code);
  const stand = plan.mill.stands.find((each) => each.code === code);
  const { rhythm } = plan.settings;
  const time = taken(code, timeTaken(passes), rhythm);
  const load = motorLoad(code, Math.hypot(...passes.map(({ rmsPower }) => rmsPower)), stand?.power);
  // A stand is free when its time has passed; the mean square of a motor's load falls as the rhythm gets longer.
  const slower = rhythm * (load.value / (load.limit ?? load.value)) ** 2;
  return { measures: [time, load], findings: [...findingOf(time, time.value), ...findingOf(load, slower)] };
}

export const isPass = (record: { readonly kind: string }): record is PassRecord => record.kind === 'pass';

/** s from the first end of the first pass to the last end of the last. */
export const timeTaken = (passes: readonly PassRecord[]): number =>
  passes.length === 0
    ? 0
    : Math.max(...passes.map(({ lastOut }) => lastOut)) - Math.min(...passes.map(({ firstIn }) => firstIn));

/** Whether a pass is the bar's last on its stand: there the stand's campaign is written down. */
export const isLastOn = ({ settings }: Plan, { code, stand }: Pick<PassRecord, 'code' | 'stand'>): boolean =>
  settings.passes.findLast((pass) => pass.stand === stand)?.code === code;

const taken = (stand: string, value: number, rhythm: number): Measure => ({
  name: 'stand taken by one bar',
  part: stand,
  unit: 's',
  value,
  limit: rhythm,
  limitIs: 'most',
  law: 'clock of the bar against the rhythm',
  sure: 'computed',
});

const motorLoad = (stand: string, value: number, limit: number | undefined): Measure => ({
  name: 'motor load',
  part: `all passes of ${stand} over the rhythm`,
  unit: 'kW',
  value,
  ...(limit === undefined ? {} : { limit, limitIs: 'most' as const }),
  law: 'root mean square over the rhythm',
  sure: 'computed',
});

function findingOf({ name, part, unit, value, limit }: Measure, rhythm: number): Finding[] {
  if (limit === undefined || value <= NEAR * limit) return [];
  const [shown, most] = [print(value, unit, 0), print(limit, unit, 0)];
  return [
    {
      level: value > limit ? 'outside' : 'near',
      check: name.replaceAll(' ', '-'),
      text: `${name[0].toUpperCase()}${name.slice(1)}, ${part}, ${shown}, limit ${most}.`,
      advice: `Roll a bar every ${print(rhythm / NEAR, 's', 0)} or slower, or move a pass to another stand.`,
      value,
      limit,
      unit,
      setting: 'settings.rhythmS',
    },
  ];
}

/** Share of a limit from which a finding says 'near'. */
const NEAR = 0.9;
