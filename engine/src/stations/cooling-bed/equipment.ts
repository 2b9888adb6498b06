import type { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** The bed as it is built, and what is assumed of the scaled surface and of the doubt of the computed camber. */
export const CoolingBedEquipment = group({
  travel: quantity('m', 'Length of the bed in the walking direction', 2, 120),
  barLength: quantity('m', 'Longest bar the bed takes', 10, 200),
  friction: quantity('one', 'Friction of the bar on the bed', 0, 1),
  emissivity: quantity('one', 'Emissivity of the scaled rail', 0.2, 1),
  camberLimit: quantity('perKm', 'Largest camber the straightener draws in', 0.1, 20),
  camberDoubt: quantity('perKm', 'Doubt of the computed camber until calibrated', 0, 10),
});
export type CoolingBedEquipment = z.output<typeof CoolingBedEquipment>;
