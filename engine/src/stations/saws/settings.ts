import { z } from 'zod';
import { group, quantities, quantity } from '../../units/group.ts';

/** What the crew at the hot saw can change. */
export const SawSettings = group(
  {
    headCrop: quantity('m', 'Crop at the head end, hot', 0, 10),
    tailCrop: quantity('m', 'Crop at the tail end, hot', 0, 10),
    samples: z.number().int().min(0).max(10).meta({ title: 'Test pieces from this bar' }),
    sampleLength: quantity('m', 'Length of a test piece, hot', 0, 3),
    coldLengths: quantities('m', 'Pieces wanted on the bed, length when cold', 6, 150),
  },
  'Cuts of the hot saw on one bar',
);
export type SawSettings = z.output<typeof SawSettings>;
