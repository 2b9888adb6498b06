import { z } from 'zod';
import type { Symmetry } from '../../phenomena/metal-flow/quad-mesh.ts';
import { group, quantity } from '../../units/group.ts';
import { CaseRoll } from './case-roll.ts';
import { CaseSteel } from './case-steel.ts';
import { EnteringSection } from './entering-section.ts';

const whole = (title: string, least: number, most: number) =>
  z.int().min(least).max(most).optional().meta({ title, unit: '' });

/**
 * One pass for the metal-flow model. The section is given whole; symmetry says what is computed of it: all, the half
 * above y = 0, or the quarter right of x = 0 as well. Rolls that symmetry mirrors are given once, on that side: with
 * 'half' no bottom roll, with 'quarter' no left roll either.
 */
export const FlowCase = group(
  {
    model: z.literal('flow'),
    title: z.string().min(1).max(120),
    symmetry: z
      .enum(['none', 'half', 'quarter'])
      .meta({ title: 'Mirrored in: nothing; y = 0; x = 0 and y = 0' }),
    section: EnteringSection,
    rolls: z.array(CaseRoll).min(1).max(4),
    steel: CaseSteel,
    tension: group({
      entry: quantity('MPa', 'Pull on the bar before the rolls', -100, 200),
      exit: quantity('MPa', 'Pull on the bar behind the rolls', -100, 200),
    }).optional(),
    heat: group({
      contact: quantity('wPerM2K', 'Heat exchange between bar and roll', 0, 300_000),
      rollTemperature: quantity('C', 'Roll surface', 0, 700),
    })
      .optional()
      .meta({ title: 'Exchange with the rolls and heat of deformation; left out, the pass is isothermal' }),
    slices: whole('Slices of the bite, 20 when left out', 4, 100),
    nodes: whole('Nodes of the computed part, about; 300 when left out', 60, 4000),
  },
  'One pass, solved slice by slice through the bite.',
);
export type FlowCase = z.output<typeof FlowCase>;

export const usualSlices = 20;
export const usualNodes = 300;

/** Lines of symmetry go through the middle of the pass. */
export const linesOf = (symmetry: FlowCase['symmetry']): Symmetry =>
  ({ none: {}, half: { y: 0 }, quarter: { x: 0, y: 0 } })[symmetry];
