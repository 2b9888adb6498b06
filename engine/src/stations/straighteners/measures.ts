import type { Measure } from '../../bar/measure.ts';
import { rise } from '../../phenomena/bending/closed-forms.ts';
import type { StraightenersEquipment } from './equipment.ts';
import type { Range, StraightFacts } from './facts.ts';
import { flatnessLimits, mostPlastified } from './limits.ts';
import type { MachineRecord } from './record.ts';
import type { StraightenersSettings } from './settings.ts';

export interface BothMachines {
  readonly height: MachineRecord;
  readonly side: MachineRecord;
}

const law = 'beam with fibre memory';

/** What stands against a limit: flatness first, then rollers and drives of both machines. */
export function measuresOf(
  both: BothMachines,
  { heightRange, sideRange, record }: StraightFacts,
  { straightness }: StraightenersSettings,
  equipment: StraightenersEquipment,
): Measure[] {
  const limits = flatnessLimits[straightness];
  return [
    flatness('height, 3 m', heightRange, 3, limits.on3m),
    flatness('height, 1 m', heightRange, 1, limits.on1m),
    flatness('side, 1.5 m', sideRange, 1.5, limits.sideways),
    ...(['height', 'side'] as const).flatMap((plane) => machine(plane, both[plane], equipment[plane])),
    stress('foot underside, bending part only', record.footStress),
    stress('crown, bending part only', record.headStress),
  ];
}

function flatness(part: string, { nominal, low, high }: Range, base: number, limit: number): Measure {
  const ends = [Math.abs(low), Math.abs(high)];
  const least = low < 0 && high > 0 ? 0 : Math.min(...ends);
  return {
    name: 'flatness',
    part,
    unit: 'mm',
    value: rise(Math.abs(nominal), base),
    low: rise(least, base),
    high: rise(Math.max(...ends), base),
    limit,
    law,
    sure: 'computed',
  };
}

function machine(
  part: string,
  { rollers, power }: MachineRecord,
  limits: { readonly force: number; readonly power: number },
): Measure[] {
  const most = (pick: (roller: MachineRecord['rollers'][number]) => number) => Math.max(...rollers.map(pick));
  const common = { part, law, sure: 'computed' as const };
  return [
    { ...common, name: 'roller force', unit: 'kN', value: most((each) => each.force), limit: limits.force },
    { ...common, name: 'bending power', unit: 'kW', value: power, limit: limits.power },
    {
      ...common,
      name: 'plastified',
      unit: 'percent',
      value: most((each) => each.plastified),
      limit: mostPlastified,
    },
  ];
}

const stress = (part: string, value: number): Measure => ({
  name: 'stress along the rail',
  part,
  unit: 'MPa',
  value,
  law,
  sure: 'computed',
});
