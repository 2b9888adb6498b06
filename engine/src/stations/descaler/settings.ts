import type { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** What the operator at the descaler can change today. */
export const DescalerSettings = group(
  {
    transfer: quantity('s', 'Furnace door to descaler, head', 0, 600),
    speed: quantity('mPerS', 'Speed through the descaler', 0.1, 5),
    pressure: quantity('bar', 'Water pressure at the nozzle', 20, 600),
    runOut: quantity('s', 'Run-out in air after the jets', 0, 60),
  },
  'How the descaler is run for this bar',
);
export type DescalerSettings = z.output<typeof DescalerSettings>;
