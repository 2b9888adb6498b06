import type { Measure } from '../../bar/measure.ts';
import type { Finding } from '../../outcome/finding.ts';
import { print } from '../../units/unit.ts';
import type { DescalerEquipment } from './equipment.ts';
import type { DescalerRecord } from './record.ts';
import type { DescalerSettings } from './settings.ts';

type Numbers = Pick<DescalerRecord, 'impact' | 'faces' | 'places' | 'waterFlow' | 'sprayWidth'>;

/** The worst mean drop of the three places, K. */
const meanDrop = ({ places }: Pick<Numbers, 'places'>): number =>
  Math.max(...Object.values(places).map(({ meanBefore, meanAfter }) => meanBefore - meanAfter));

export function measuresOf(numbers: Numbers, { limits }: DescalerEquipment): Measure[] {
  return [
    {
      name: 'impact pressure',
      part: '',
      unit: 'MPa',
      value: numbers.impact,
      limit: limits.impact,
      limitIs: 'least',
      law: 'jet momentum',
      sure: 'computed',
    },
    ...numbers.faces.map(
      ({ face, covered }): Measure => ({
        name: 'coverage',
        part: face,
        unit: 'percent',
        value: covered,
        limit: limits.coverage,
        limitIs: 'least',
        law: 'footprints side by side',
        sure: 'computed',
      }),
    ),
    {
      name: 'mean drop',
      part: '',
      unit: 'K',
      value: meanDrop(numbers),
      limit: limits.meanDrop,
      law: 'conduction in the section',
      sure: 'computed',
    },
    {
      name: 'water flow',
      part: '',
      unit: 'lPerMin',
      value: numbers.waterFlow,
      limit: limits.pumpFlow,
      law: 'nozzle flow by the root of pressure',
      sure: 'computed',
    },
  ];
}

/** Each limit with the setting that mends it. */
export function findingsOf(
  numbers: Numbers,
  settings: DescalerSettings,
  { limits, nozzlePitch }: DescalerEquipment,
): Finding[] {
  const { impact, faces, waterFlow, sprayWidth } = numbers;
  const drop = meanDrop(numbers);
  const bare = faces.filter(({ covered }) => covered < limits.coverage * (1 - 1e-12));
  const worst = bare.reduce<(typeof bare)[number] | undefined>(
    (most, face) => (most && most.covered <= face.covered ? most : face),
    undefined,
  );
  const needed = (settings.pressure * limits.impact) / impact;
  return [
    ...(impact < limits.impact
      ? [
          outside('impact', impact, limits.impact, 'MPa', 'pressureBar', {
            text: `The jets press with ${print(impact, 'MPa', 2)}; the scale needs ${print(limits.impact, 'MPa', 2)}.`,
            advice: `Raise the pressure to ${print(needed, 'bar')}, or bring the nozzles nearer.`,
          }),
        ]
      : []),
    ...(worst
      ? [
          outside('coverage', worst.covered, limits.coverage, 'percent', 'mill.descaler.nozzles', {
            text: `Of the ${worst.face} face ${print(worst.covered, 'percent')} is under the jets; ${print(limits.coverage, 'percent')} is wanted.`,
            advice: `Add nozzles there: one footprint is ${print(sprayWidth, 'mm')} wide on a pitch of ${print(nozzlePitch, 'mm')}.`,
          }),
        ]
      : []),
    ...(drop > limits.meanDrop
      ? [
          outside('mean-drop', drop, limits.meanDrop, 'K', 'speedMPerS', {
            text: `The bar loses ${print(drop, 'K')} in the mean; the limit is ${print(limits.meanDrop, 'K')}.`,
            advice: 'Drive it through faster, or shorten the run-out.',
          }),
        ]
      : []),
    ...(waterFlow > limits.pumpFlow
      ? [
          outside('pump-flow', waterFlow, limits.pumpFlow, 'lPerMin', 'pressureBar', {
            text: `The nozzles take ${print(waterFlow, 'lPerMin')}; the pump gives ${print(limits.pumpFlow, 'lPerMin')}.`,
            advice: 'Lower the pressure or shut nozzles that no face needs.',
          }),
        ]
      : []),
  ];
}

const outside = (
  check: string,
  value: number,
  limit: number,
  unit: Measure['unit'],
  setting: string,
  words: { readonly text: string; readonly advice: string },
): Finding => ({ level: 'outside', check: `descaler-${check}`, ...words, value, limit, unit, setting });
