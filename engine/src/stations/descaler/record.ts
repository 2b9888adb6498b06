import { z } from 'zod';
import { recordShape } from '../../bar/station.ts';
import { group, quantities, quantity } from '../../units/group.ts';

const celsius = (title: string) => quantity('C', title, -50, 1600);
const rowOfCelsius = (title: string) => quantities('C', title, -50, 1600);

/** One place along the bar on its way through the jets. */
export const DescaledPlace = group({
  arrives: quantity('s', 'Time at the jets since the furnace door', 0, 1e5),
  meanBefore: celsius('Mean before the jets'),
  surfaceBefore: celsius('Surface before the jets'),
  surfaceLowest: celsius('Coldest point of the surface under the jets'),
  surfaceAfter: celsius('Surface after the run-out'),
  meanAfter: celsius('Mean after the run-out'),
});
export type DescaledPlace = z.output<typeof DescaledPlace>;

export const DescaledFace = group({
  face: z.enum(['top', 'bottom', 'left', 'right']),
  width: quantity('mm', 'Width of the face', 0, 2000),
  covered: quantity('percent', 'Share under the jets', 0, 100),
  overlap: quantity('mm', 'Overlap of neighbouring jets', -2000, 2000),
});
export type DescaledFace = z.output<typeof DescaledFace>;

export const DescalerRecord = group(
  {
    kind: z.literal('descaler'),
    ...recordShape,
    jetForce: quantity('N', 'Force of one jet', 0, 1e5),
    impact: quantity('MPa', 'Impact pressure', 0, 100),
    sprayWidth: quantity('mm', 'Width of one footprint', 0, 5000),
    sprayDepth: quantity('mm', 'Depth of one footprint along the bar', 0, 500),
    underJet: quantity('s', 'Time under the jets', 0, 60),
    faces: z.array(DescaledFace),
    places: z.strictObject({ head: DescaledPlace, middle: DescaledPlace, tail: DescaledPlace }),
    /** The middle of the bar from the furnace door to the end of the run-out. */
    curves: group({
      time: quantities('s', 'Time since the furnace door', 0, 1e5),
      mean: rowOfCelsius('Mean of the section'),
      surface: rowOfCelsius('Mean along the surface'),
      core: rowOfCelsius('Core'),
    }),
    scaleBefore: quantity('mm', 'Scale thickness before', 0, 50),
    scaleRemoved: quantity('kg', 'Scale removed', 0, 1e4),
    waterFlow: quantity('lPerMin', 'Water flow', 0, 1e6),
    water: quantity('kg', 'Water for this bar', 0, 1e7),
  },
  'What happened to the bar in the descaler',
);
export type DescalerRecord = z.output<typeof DescalerRecord>;
