import type { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

/** What planning and the finishing crew can change. */
export const YardSettings = group(
  {
    endCrop: quantity('m', 'Cut from each end of a straightened bar', 0, 5),
    sampleLength: quantity('m', 'Test piece from each bar, cold', 0, 3),
    railsPerBundle: quantity('one', 'Rails in one bundle, at most', 1, 60),
  },
  'Cold cutting, bundling and loading',
);
export type YardSettings = z.output<typeof YardSettings>;
