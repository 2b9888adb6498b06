import { z } from 'zod';
import { CoolingBedEquipment } from '../stations/cooling-bed/equipment.ts';
import { DescalerEquipment } from '../stations/descaler/equipment.ts';
import { FurnaceEquipment } from '../stations/furnace/equipment.ts';
import { SawEquipment } from '../stations/saws/equipment.ts';
import { Stand } from '../stations/stands/equipment.ts';
import { StraightenersEquipment } from '../stations/straighteners/equipment.ts';
import { YardEquipment } from '../stations/yard/equipment.ts';
import { group } from '../units/group.ts';

/** What needs a workshop to change: the stations in the order the bar meets them. */
export const Mill = group(
  {
    name: z.string().max(80).meta({ title: 'Name of the mill' }),
    furnace: FurnaceEquipment,
    descaler: DescalerEquipment,
    stands: z.array(Stand).min(1).max(20),
    saws: SawEquipment,
    coolingBed: CoolingBedEquipment,
    straighteners: StraightenersEquipment,
    yard: YardEquipment,
  },
  'The mill',
);
export type Mill = z.output<typeof Mill>;
