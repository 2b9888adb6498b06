import { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** What the crew of the cooling bed can change today. */
export const CoolingBedSettings = group({
  pose: z.enum(['on-side', 'standing']).meta({ title: 'How the bar lies on the bed' }),
  pitch: quantity('mm', 'Spacing of bars on the bed', 150, 2000),
  rhythm: quantity('s', 'Time between bars', 10, 3600),
  runOut: quantity('s', 'Time from the last saw cut or pass to the bed', 0, 600),
  transfer: quantity('s', 'Time of turning and pre-bending before the first step', 0, 600),
  air: quantity('C', 'Air in the bay', -40, 60),
  preCamber: quantity('mm', 'Pre-camber, rise over the bar, head outside', -8000, 8000),
  leaveBelow: quantity('C', 'Leaves the bed when the hottest point is below', 40, 150),
  support: z
    .enum(['free', 'held', 'friction'])
    .meta({ title: 'How the bed lets the middle of the bar bend' }),
});
export type CoolingBedSettings = z.output<typeof CoolingBedSettings>;
