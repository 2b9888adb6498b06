import type { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** The hot saw. */
export const SawEquipment = group(
  {
    kerf: quantity('mm', 'Width of the kerf', 2, 20),
    cutTime: quantity('s', 'Time of one cut', 1, 60),
    longestPiece: quantity('m', 'Longest piece the cooling bed takes, hot', 6, 150),
  },
  'Hot saw',
);
export type SawEquipment = z.output<typeof SawEquipment>;
