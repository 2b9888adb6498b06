import { z } from 'zod';
import { group, quantity } from '../units/group.ts';

export const RailsOrdered = group({
  length: quantity('m', 'Length of the rails at 15 °C', 6, 150),
  count: z.number().int().min(0).max(100_000).meta({ title: 'Number of rails' }),
});

/** What the customer asked for. */
export const Order = group(
  {
    number: z.string().max(60).meta({ title: 'Order number' }),
    profile: z.string().max(40).meta({ title: 'Rail profile, as in the library: 60E1' }),
    grade: z.string().max(40).meta({ title: 'Steel grade, as in the library: R260' }),
    rails: z.array(RailsOrdered).min(1).max(20).meta({ title: 'Rails by length' }),
    straightness: z.enum(['A', 'B']).meta({ title: 'Straightness class of EN 13674-1' }),
    profileClass: z.enum(['X', 'Y']).meta({ title: 'Profile tolerance class of EN 13674-1' }),
  },
  'The order',
);
export type Order = z.output<typeof Order>;

/** The cast bloom as it is charged. */
export const Bloom = group(
  {
    height: quantity('mm', 'Height as it lies in the furnace, cold', 80, 600),
    width: quantity('mm', 'Width as it lies in the furnace, cold', 80, 600),
    cornerRadius: quantity('mm', 'Corner radius', 0, 100),
    length: quantity('m', 'Length, cold', 1, 15),
    charging: quantity('C', 'Charging temperature', -20, 1000),
  },
  'The bloom',
);
export type Bloom = z.output<typeof Bloom>;
