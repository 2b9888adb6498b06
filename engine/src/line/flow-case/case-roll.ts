import { z } from 'zod';
import type { FlowRoll, Side } from '../../phenomena/metal-flow/problem.ts';
import { rollProfile } from '../../phenomena/metal-flow/roll-profile.ts';
import type { Path } from '../../section/outline.ts';
import { OutlineFile } from '../../section/outline-file.ts';
import { choice, group, optionalQuantity, quantity } from '../../units/group.ts';
import { pointRows, reachMm } from './entering-section.ts';

export const sides = ['top', 'bottom', 'left', 'right'] as const satisfies readonly Side[];

/** A roll's edge in the exit plane, from one end of the roll to the other, in either direction. */
const RollProfile = choice('shape', [
  group({ shape: z.literal('outline'), rows: OutlineFile }, 'Lines and arcs: x mm, y mm, bulge.'),
  group({ shape: z.literal('points'), pointsMm: pointRows(2) }, 'Straight lines through points.'),
]);

/** One roll. It is either driven, by `turningRpm` or `turningRadPerS`, or `idle`: exactly one of the three. */
export const CaseRoll = group({
  name: z.string().min(1).max(40),
  side: z.enum(sides).meta({ title: 'Side of the bar on which it lies' }),
  axis: quantity('mm', 'Axis: y of top and bottom rolls, x of left and right ones', -reachMm, reachMm),
  profile: RollProfile,
  turning: optionalQuantity('rpm', 'Turns of a driven roll', 0.1, 2000),
  turningRadPerS: z
    .number()
    .min(0.01)
    .max(200)
    .optional()
    .meta({ title: 'Turning of a driven roll', unit: 'rad/s' }),
  idle: z.literal(true).optional().meta({ title: 'Turns with the bar' }),
  friction: quantity('one', 'Friction, Coulomb', 0.02, 1),
  shearLimit: optionalQuantity('one', 'Most that friction carries, share of the shear yield stress', 0.1, 1),
});
export type CaseRoll = z.output<typeof CaseRoll>;

export const pathOfRoll = ({ profile }: CaseRoll): Path =>
  profile.shape === 'outline' ? profile.rows : profile.pointsMm;

export const flowRoll = (roll: CaseRoll): FlowRoll => ({
  name: roll.name,
  side: roll.side,
  axis: roll.axis,
  profile: rollProfile(pathOfRoll(roll)),
  turning: roll.turning ?? roll.turningRadPerS ?? 'idle',
  friction: roll.friction,
  ...(roll.shearLimit === undefined ? {} : { shearLimit: roll.shearLimit }),
});
