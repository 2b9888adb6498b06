import { z } from 'zod';
import { group, optionalQuantity, quantity } from '../../units/group.ts';

const whole = (title: string, least: number, most: number) =>
  z.int().min(least).max(most).optional().meta({ title, unit: '' });

export const passModels = ['handbook', 'flow'] as const;

/** What computes a pass: the handbook's laws, the usual, or metal flow slice by slice through the bite. */
export const PassModel = group({
  model: z.enum(passModels).optional().meta({ title: 'What computes the pass' }),
  nodes: whole('Metal flow: nodes of the computed part, about; 300 when left out', 60, 4000),
  slices: whole('Metal flow: slices of the bite, 12 when left out', 4, 100),
});
export type PassModel = z.output<typeof PassModel>;

/**
 * One pass. `gap` is the clear distance where the horizontal rolls come closest: barrels of a flat pass, collars of a
 * groove, web faces of a universal pass. `footRoll` and `headRoll` are the faces of the vertical rolls on the axis;
 * left out, they stand where the groove's drawing puts them. `interpass` runs from the last end leaving the stand
 * before to the first end entering here; at a continuous stand from the leading end's exit to its entry.
 * Pulls are for metal flow alone; the handbook's laws know none.
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
    guide: optionalQuantity('mm', 'Middle of the bar along the rolls', -600, 600, 'as it comes'),
    interpass: quantity('s', 'Time before the pass', 0, 600),
    water: z.boolean().meta({ title: 'Water on the bar before the pass' }),
    ...PassModel.shape,
    entryTension: optionalQuantity('MPa', 'Pull on the bar before the rolls', -100, 200, 'none'),
    exitTension: optionalQuantity('MPa', 'Pull on the bar behind the rolls', -100, 200, 'none'),
    rhythm: quantity('s', 'Rhythm of the campaign, bloom to bloom', 10, 3600),
  },
  'What the pulpit can change for one pass.',
);
export type PassSettings = z.output<typeof PassSettings>;
