import { z } from 'zod';
import { recordShape } from '../../bar/station.ts';
import { group, quantities, quantity } from '../../units/group.ts';

/** What the hot saw did to one bar. Lengths along the bar add up: crops, samples, kerfs, pieces and remainder. */
export const SawRecord = group({
  kind: z.literal('saws'),
  ...recordShape,
  lengthIn: quantity('m', 'Bar as rolled, hot', 0, 1000),
  headCrop: quantity('m', 'Head crop', 0, 100),
  tailCrop: quantity('m', 'Tail crop', 0, 100),
  samples: quantity('m', 'Test pieces together', 0, 100),
  kerfs: quantity('m', 'Kerfs together', 0, 10),
  remainder: quantity('m', 'Left over behind the last piece, scrapped', 0, 1000),
  hotPieces: quantities('m', 'Pieces, hot', 0, 1000),
  coldPieces: quantities('m', 'The same pieces at 20 °C', 0, 1000),
  shrinkage: quantity('percent', 'Shrinkage from hot to 20 °C', 0, 5),
  time: quantity('s', 'Time for all cuts', 0, 1000),
});
export type SawRecord = z.output<typeof SawRecord>;
