import { z } from 'zod';
import { choice, group, optionalQuantity } from '../../units/group.ts';
import { CraneDimensions, RailDimensions } from './dimensions.ts';

/** How well a number is known: seen in print, fitted to a drawing, remembered, fitted to a property, or a consequence. */
export const statuses = ['published text', 'outline fit', 'memory', 'fitted', 'follows from others'] as const;

export const Origin = z.strictObject({ status: z.enum(statuses), source: z.string().max(200) });
export type Origin = z.output<typeof Origin>;

/** Properties as one table prints them; only those that it prints. */
export const Published = group({
  area: optionalQuantity('mm2', 'Area', 100, 1e6),
  mass: optionalQuantity('kgPerM', 'Mass', 1, 1000),
  centroidAboveFoot: optionalQuantity('mm', 'Centroid above the underside', 1, 260),
  inertiaX: optionalQuantity('mm4', 'Second moment, upright bending', 1e3, 1e10),
  inertiaY: optionalQuantity('mm4', 'Second moment, lateral bending', 1e3, 1e10),
  modulusHead: optionalQuantity('mm3', 'Section modulus at the head', 1e2, 1e8),
  modulusFoot: optionalQuantity('mm3', 'Section modulus at the foot', 1e2, 1e8),
  modulusLateral: optionalQuantity('mm3', 'Lateral section modulus', 1e2, 1e8),
  torsion: optionalQuantity('mm4', 'Torsion constant', 1e3, 1e10),
  status: z.enum(statuses),
  source: z.string().max(200),
});
export type Published = z.output<typeof Published>;

const common = {
  name: z.string().min(1).max(40),
  standard: z.string().max(80),
  /** By the name of the dimension: 'headDepth', 'crown.0.endsAt'. */
  origins: z.record(z.string(), Origin),
  published: z.array(Published),
};

/** A rail profile in a file: its dimensions, where each comes from, and what others print about its properties. */
export const Profile = choice('family', [
  group({ ...common, family: z.literal('flat-bottom'), dimensions: RailDimensions }),
  group({ ...common, family: z.literal('crane'), dimensions: CraneDimensions }),
]);
export type Profile = z.output<typeof Profile>;
