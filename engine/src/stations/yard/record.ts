import { z } from 'zod';
import { recordShape } from '../../bar/station.ts';
import { group, quantities, quantity } from '../../units/group.ts';

const count = (title: string) => quantity('one', title, 0, 1e6);

/** One way to cut a bar, and how many bars are cut so. */
export const CutPattern = group({
  rails: quantities('m', 'Rails cut from one bar', 0, 200),
  bars: count('Bars cut like this'),
  remnant: quantity('m', 'Left of each bar', 0, 200),
});
export type CutPattern = z.output<typeof CutPattern>;

/** How the rails of one length leave. */
export const Bundle = group({
  length: quantity('m', 'Length of the rails', 0, 200),
  rails: count('Rails ordered'),
  railMass: quantity('kg', 'Mass of one rail', 0, 20000),
  perBundle: count('Rails in a full bundle'),
  bundles: count('Bundles'),
  bundleMass: quantity('t', 'Mass of a full bundle', 0, 200),
  slingingPoints: count('Lifting points, at least'),
  bundlesPerWagon: count('Bundles on one wagon or wagon set'),
  wagons: count('Wagons or wagon sets'),
});
export type Bundle = z.output<typeof Bundle>;

/** From straight bars to the loaded order. */
export const YardRecord = group({
  kind: z.literal('yard'),
  ...recordShape,
  massPerMetre: quantity('kgPerM', 'Mass per metre, cold', 0, 300),
  usableLength: quantity('m', 'Length to cut from one bar, without its ends and test piece', 0, 200),
  patterns: z.array(CutPattern),
  bundles: z.array(Bundle),
  bars: count('Bars, and blooms, for the order'),
  ordered: quantity('t', 'Ordered mass', 0, 1e6),
  yield: quantity('percent', 'Delivered of the blooms charged, whole order', 0, 100),
});
export type YardRecord = z.output<typeof YardRecord>;
