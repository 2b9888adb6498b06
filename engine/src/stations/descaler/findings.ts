import { type Measure, shareOfLimit } from '../../bar/measure.ts';
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

/** Each limit that is crossed or nearly so, with the setting that mends it; of the faces only the barest. */
export function findingsOf(
  numbers: Numbers,
  measures: readonly Measure[],
  settings: DescalerSettings,
  { nozzlePitch }: DescalerEquipment,
): Finding[] {
  const { impact, sprayWidth } = numbers;
  const named = (name: string) => measures.filter((measure) => measure.name === name);
  const [press] = named('impact pressure');
  const needed = (settings.pressure * (press.limit ?? 0)) / impact;
  const barest = named('coverage').reduce((most, face) => (face.value < most.value ? face : most));
  return [
    ...told(press, 'impact', 'pressureBar', {
      text: (is, limit) => `The jets press with ${is}; the scale needs ${limit}.`,
      advice: `Raise the pressure to ${print(needed, 'bar')} or more, or bring the nozzles nearer.`,
    }),
    // Full coverage lies close to its limit by nature: only what is crossed is told.
    ...told(barest, 'coverage', 'mill.descaler.nozzles', {
      text: (is, limit) => `Of the ${barest.part} face ${is} is under the jets; ${limit} is wanted.`,
      advice: `Add nozzles there: one footprint is ${print(sprayWidth, 'mm')} wide on a pitch of ${print(nozzlePitch, 'mm')}.`,
    }).filter(({ level }) => level === 'outside'),
    ...told(named('mean drop')[0], 'mean-drop', 'speedMPerS', {
      text: (is, limit) => `The bar loses ${is} in the mean; the limit is ${limit}.`,
      advice: 'Drive it through faster, or shorten the run-out.',
    }),
    ...told(named('water flow')[0], 'pump-flow', 'pressureBar', {
      text: (is, limit) => `The nozzles take ${is}; the pump gives ${limit}.`,
      advice: 'Lower the pressure or shut nozzles that no face needs.',
    }),
  ];
}

interface Words {
  readonly text: (is: string, limit: string) => string;
  readonly advice: string;
}

/** Outside from the limit on, near from 90 % of it. */
function told(measure: Measure, check: string, setting: string, { text, advice }: Words): Finding[] {
  const { value, limit, unit } = measure;
  const share = shareOfLimit(measure);
  if (limit === undefined || share === undefined || share <= 0.9) return [];
  const level = share > 1 + 1e-12 ? 'outside' : 'near';
  const decimals = unit === 'MPa' ? 2 : undefined;
  const words = text(print(value, unit, decimals), print(limit, unit, decimals));
  return [{ level, check: `descaler-${check}`, text: words, advice, value, limit, unit, setting }];
}
