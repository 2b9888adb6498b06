import { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** One machine: staggered rollers at equal distances; odd rollers on one side of the bar, even ones on the other. */
export const StraightenerMachine = group({
  rollers: z.number().int().min(4).max(15).meta({ title: 'Rollers' }),
  pitch: quantity('mm', 'Distance between neighbouring rollers', 300, 3000),
  diameter: quantity('mm', 'Roller diameter', 200, 2000),
  force: quantity('kN', 'Largest force on one roller', 50, 10000),
  power: quantity('kW', 'Drive', 10, 5000),
});
export type StraightenerMachine = z.output<typeof StraightenerMachine>;

export const StraightenersEquipment = group({ height: StraightenerMachine, side: StraightenerMachine });
export type StraightenersEquipment = z.output<typeof StraightenersEquipment>;
