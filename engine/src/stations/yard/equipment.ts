import type { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** Cold saw, cranes and wagons. */
export const YardEquipment = group(
  {
    kerf: quantity('mm', 'Kerf of the cold saw', 1, 20),
    craneLimit: quantity('t', 'Largest mass on the hooks', 1, 200),
    wagonLimit: quantity('t', 'Largest load of one wagon or wagon set', 10, 2000),
    bundleLimit: quantity('t', 'Largest mass of one bundle', 0.5, 100),
  },
  'Cold saw, cranes, wagons',
);
export type YardEquipment = z.output<typeof YardEquipment>;
