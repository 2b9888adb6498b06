import type { Measure } from '../../bar/measure.ts';
import type { FurnaceEquipment } from './equipment.ts';
import type { FurnaceRecord } from './record.ts';

type Numbers = Omit<FurnaceRecord, 'kind' | 'leaving' | 'balance' | 'measures' | 'findings'>;

/** Largest surface over core while the core is cold, K; 0 when it never was. */
export function coldGradient({ curves }: Pick<Numbers, 'curves'>, coldBelow: number): number {
  let largest = 0;
  curves.core.forEach((core, k) => {
    if (core < coldBelow) largest = Math.max(largest, curves.surface[k] - core);
  });
  return largest;
}

/** What stands against a limit at the door, in the order a heater reads it. */
export function measuresOf(numbers: Numbers, { limits, scaleAgainstAir }: FurnaceEquipment): Measure[] {
  const { curves, scaleLoss, rules } = numbers;
  const last = curves.time.length - 1;
  const [scaleLow, scaleHigh] = [0.5 / 0.6, 0.7 / 0.6];
  const model = { part: '', law: 'conduction in the section', sure: 'computed' } as const;
  return [
    {
      ...model,
      name: 'unevenness',
      unit: 'K',
      value: curves.hottest[last] - curves.coldest[last],
      limit: limits.uniformity,
    },
    {
      ...model,
      name: 'skid mark',
      unit: 'K',
      value: curves.top[last] - curves.bottom[last],
      limit: limits.skidMark,
    },
    {
      ...model,
      name: 'surface over cold core',
      unit: 'K',
      value: coldGradient(numbers, limits.coldBelow),
      limit: limits.coldGradient,
    },
    { ...model, name: 'hottest point', unit: 'C', value: Math.max(...curves.hottest), limit: limits.burning },
    {
      name: 'scale loss',
      part: '',
      unit: 'percent',
      value: scaleLoss,
      low: scaleLoss * scaleLow,
      high: scaleLoss * scaleHigh,
      limit: limits.scaleLoss,
      law: `parabolic growth, ${scaleAgainstAir} of that in air`,
      sure: 'assumed',
    },
    {
      name: 'decarburised depth',
      part: '',
      unit: 'mm',
      value: numbers.decarburised,
      limit: limits.decarburised,
      law: 'Birks and Jackson 1970 in form',
      sure: 'assumed',
    },
    {
      name: 'fuel',
      part: '',
      unit: 'GJPerT',
      value: numbers.fuel,
      low: numbers.fuelLow,
      high: numbers.fuelHigh,
      limit: limits.fuel,
      law: 'useful heat over efficiency',
      sure: 'assumed',
    },
    {
      name: 'heating time',
      part: 'rule of thumb',
      unit: 'min',
      value: rules.taits,
      low: rules.taits,
      high: rules.high,
      law: 'Taits; 0.2 to 0.3 h per cm',
      sure: 'assumed',
    },
  ];
}
