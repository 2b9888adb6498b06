import { type Measure, shareOfLimit } from '../../bar/measure.ts';
import type { Finding } from '../../outcome/finding.ts';
import { outsideValidity } from '../../steel/law.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import { print } from '../../units/unit.ts';
import type { FurnaceEquipment } from './equipment.ts';
import type { FurnaceRecord } from './record.ts';
import type { FurnaceSettings } from './settings.ts';

type Numbers = Pick<FurnaceRecord, 'curves' | 'residence' | 'rules' | 'zones'>;

/** Everything about this heating that a heater should know. */
export function findingsOf(
  numbers: Numbers,
  measures: readonly Measure[],
  settings: FurnaceSettings,
  equipment: FurnaceEquipment,
  law: ThermalLaw,
): Finding[] {
  const last = numbers.zones.length - 1;
  return [
    ...measures.flatMap((measure) => againstLimit(measure, last)),
    ...dropOut(numbers, settings, last),
    ...rulesOfThumb(numbers),
    ...outsideValidity(law, { temperature: Math.max(...numbers.curves.hottest) }),
    ...unfit(equipment),
  ];
}

/** What mends each measure: the words, and the setting they are about. */
const mending: Readonly<
  Record<string, (last: number) => { advice: string; setting?: string; stop?: boolean }>
> = {
  unevenness: (last) => ({
    advice: 'Lengthen the rhythm, or lower the soaking zone and raise the one before it.',
    setting: `zones.${last}.temperatureC`,
  }),
  'skid mark': () => ({
    advice:
      'Lengthen the rhythm; the skids and the bottom burners need the furnace crew, no single setting helps.',
    setting: 'settings.rhythmS',
  }),
  'surface over cold core': () => ({
    advice: 'Lower the first zone: a thick high-carbon bloom that is cold inside may crack.',
    setting: 'zones.0.temperatureC',
  }),
  'hottest point': (last) => ({
    advice: 'Lower the hottest zone; burnt steel cannot be rolled sound.',
    setting: `zones.${Math.max(last - 1, 0)}.temperatureC`,
    stop: true,
  }),
  'scale loss': (last) => ({
    advice: 'Shorten the rhythm or lower the last zones; check the oxygen in the furnace gas.',
    setting: `zones.${last}.temperatureC`,
  }),
  'decarburised depth': (last) => ({
    advice: 'Shorten the rhythm or lower the last zones.',
    setting: `zones.${last}.temperatureC`,
  }),
  fuel: () => ({ advice: 'Charge warmer blooms, or mend the furnace: no single setting helps.' }),
};

function againstLimit(measure: Measure, last: number): Finding[] {
  const { name, value, limit, unit } = measure;
  const share = shareOfLimit(measure);
  const mend = mending[name];
  if (limit === undefined || share === undefined || !mend) return [];
  const worst = measure.high === undefined ? share : Math.max(share, measure.high / limit);
  const near = unit === 'C' ? value > limit - 20 : worst > 0.9;
  if (share <= 1 && !near) return [];
  const { stop, ...advised } = mend(last);
  const level = share > 1 ? 'outside' : 'near';
  const text = `The ${name} is ${print(value, unit)}; the limit is ${print(limit, unit)}.`;
  return [
    {
      level,
      check: `furnace-${name.replaceAll(' ', '-')}`,
      text,
      ...advised,
      value,
      limit,
      unit,
      ...(stop && level === 'outside' ? { stop } : {}),
    },
  ];
}

function dropOut(
  { curves }: Numbers,
  { dropOutLow, dropOutHigh, zones }: FurnaceSettings,
  last: number,
): Finding[] {
  const value = curves.surface[curves.surface.length - 1];
  if (value >= dropOutLow && value <= dropOutHigh) return [];
  const low = value < dropOutLow;
  const limit = low ? dropOutLow : dropOutHigh;
  const target = zones[last].temperature + limit - value;
  return [
    {
      level: 'outside',
      check: 'furnace-drop-out',
      text: `The surface leaves at ${print(value, 'C')}; it should be ${low ? 'at least' : 'at most'} ${print(limit, 'C')}.`,
      advice: `${low ? 'Raise' : 'Lower'} the last zone to about ${print(target, 'C')}, or change the rhythm.`,
      value,
      limit,
      unit: 'C',
      setting: `zones.${last}.temperatureC`,
    },
  ];
}

/** The slowest rule and two thirds of the fastest: outside of it one of the inputs is likely wrong. */
function rulesOfThumb({ residence, rules }: Numbers): Finding[] {
  const [fastest, slowest] = [(2 / 3) * rules.taits, rules.high];
  if (residence >= fastest && residence <= slowest) return [];
  return [
    {
      level: 'note',
      check: 'furnace-heating-time',
      text: `The bloom stays ${print(residence, 'min')}; rules of thumb give ${print(fastest, 'min')} to ${print(slowest, 'min')}.`,
      advice: 'Check rhythm, pitch and zone lengths; the rules are coarse and made for other furnaces.',
      value: residence,
      limit: residence < fastest ? fastest : slowest,
      unit: 'min',
      setting: 'settings.rhythmS',
    },
  ];
}

function unfit({ efficiency, efficiencyLow, efficiencyHigh }: FurnaceEquipment): Finding[] {
  if (efficiencyLow <= efficiency && efficiency <= efficiencyHigh) return [];
  return [
    {
      level: 'note',
      check: 'furnace-efficiency-range',
      text: `The efficiency ${print(efficiency, 'percent')} lies outside its own range.`,
      advice: `Give a range around it in the mill data.`,
      value: efficiency,
      unit: 'percent',
      setting: 'mill.furnace.efficiencyPercent',
    },
  ];
}
