import { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

export const ZoneSettings = group({
  temperature: quantity('C', 'Zone temperature', 20, 1400),
});
export type ZoneSettings = z.output<typeof ZoneSettings>;

/** What the heater can change today. */
export const FurnaceSettings = group(
  {
    rhythm: quantity('s', 'Rhythm: one bloom every', 20, 1800),
    /** One per zone of the equipment, in the order the bloom meets them. */
    zones: z.array(ZoneSettings).min(1).max(12),
    dropOutLow: quantity('C', 'Surface at the door, lowest wanted', 900, 1350),
    dropOutHigh: quantity('C', 'Surface at the door, highest allowed', 900, 1350),
  },
  'How the reheating furnace is run for this bloom',
);
export type FurnaceSettings = z.output<typeof FurnaceSettings>;
