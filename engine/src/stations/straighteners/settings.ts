import { z } from 'zod';
import { group, quantities, quantity } from '../../units/group.ts';

/** What the crew of the straighteners can change today. Even rollers are set; odd rollers stand on the pass line. */
export const StraightenersSettings = group({
  heightOffsets: quantities(
    'mm',
    'Height plane: offsets of rollers 2, 4, 6 …, pressing on the head',
    -20,
    60,
  ),
  heightLast: quantity('mm', 'Height plane: offset of the last odd roller, lifting the foot', -20, 20),
  sideOffsets: quantities('mm', 'Side plane: offsets of rollers 2, 4, 6 …', -20, 60),
  speed: quantity('mPerS', 'Speed', 0.1, 4),
  heightSpread: quantity('perKm', 'Camber coming in, height plane, ± from bar to bar', 0, 20),
  sideSpread: quantity('perKm', 'Camber coming in, side plane, ± from bar to bar', 0, 20),
  straightness: z.enum(['A', 'B']).meta({ title: 'Class of straightness ordered' }),
});
export type StraightenersSettings = z.output<typeof StraightenersSettings>;
