import { z } from 'zod';
import { group, optionalQuantity, quantity } from '../../units/group.ts';

/**
 * One pass. `gap` is the clear distance where the horizontal rolls come closest: barrels of a flat pass, collars of a
 * groove, web faces of a universal pass. `footRoll` and `headRoll` are the faces of the vertical rolls on the axis;
 * left out, they stand where the groove's drawing puts them. `interpass` runs from the last end leaving the stand
 * before to the first end entering here; at a continuous stand from the leading end's exit to its entry.
 * `guide` places the middle of the bar along the rolls; left out, it stays where the pass before left it.
 * Findings name these settings by their file key alone ('gapMm'); the line puts the pass's path before it.
 */
export const PassSettings = group(
  {
    code: z.string().min(1).max(4),
    title: z.string(),
    stand: z.string().min(1),
    groove: z.string().min(1),
    gap: quantity('mm', 'Gap, horizontal rolls', 2, 700),
    footRoll: optionalQuantity('mm', 'Foot roll position', -300, 300),
    headRoll: optionalQuantity('mm', 'Head roll position', -100, 500),
    speed: quantity('mPerS', 'Roll speed, at the full diameter', 0.2, 12),
    direction: z.enum(['forward', 'back']).meta({ title: 'Rolled head first or tail first' }),
    turn: z
      .union([z.literal(0), z.literal(90), z.literal(180)])
      .meta({ title: 'Turn before the pass', unit: '°' }),
    guide: optionalQuantity('mm', 'Middle of the bar along the rolls', -600, 600),
    interpass: quantity('s', 'Time before the pass', 0, 600),
    water: z.boolean().meta({ title: 'Water on the bar before the pass' }),
    rhythm: quantity('s', 'Rhythm of the campaign, bloom to bloom', 10, 3600),
  },
  'What the pulpit can change for one pass.',
);
export type PassSettings = z.output<typeof PassSettings>;
