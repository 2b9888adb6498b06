import { z } from 'zod';
import { recordShape } from '../../bar/station.ts';
import { group, optionalQuantity, quantities, quantity } from '../../units/group.ts';

const celsius = (title: string) => quantities('C', title, -60, 1300);
const camber = (title: string) => quantity('perKm', title, -200, 200);

/** Times on the bar's clock since it left the last pass at which parts of the section pass one temperature. */
export const CoolingTimes = group({
  below: quantity('C', 'Temperature passed', 0, 1300),
  head: optionalQuantity('s', 'Head, middle', 0, 1e6),
  web: optionalQuantity('s', 'Web, mid-height', 0, 1e6),
  footTip: optionalQuantity('s', 'Foot tip, hotter side', 0, 1e6),
  mean: optionalQuantity('s', 'Mean of the section', 0, 1e6),
});
export type CoolingTimes = z.output<typeof CoolingTimes>;

/** Temperatures of the section at one moment, node by node. */
export const SectionPicture = group({
  time: quantity('s', 'Time since the last pass', 0, 1e6),
  temperature: celsius('Temperature at each node'),
  pearlite: quantities('one', 'Share of pearlite at each node', 0, 1),
});
export type SectionPicture = z.output<typeof SectionPicture>;

/** What happened on the cooling bed: middle of the bar, upright pose (x across, y up from the foot's underside). */
export const CoolingBedRecord = group({
  kind: z.literal('cooling-bed'),
  ...recordShape,

  /** Rows that share `time`; the last is the bar let go as it leaves: what the camber and temperature lanes are drawn from. */
  time: quantities('s', 'Time since the last pass', 0, 1e6),
  head: celsius('Head, middle'),
  web: celsius('Web, mid-height'),
  footTip: celsius('Foot tip, hotter side'),
  mean: celsius('Mean of the section'),
  heightCamber: quantities('perKm', 'Camber in the height plane, head longer positive', -200, 200),
  sideCamber: quantities('perKm', 'Camber in the side plane, right side longer positive', -200, 200),
  pearliteMean: quantities('one', 'Share of pearlite, mean of the section', 0, 1),

  coolingTimes: z.array(CoolingTimes),
  reversals: z.number().int().meta({ title: 'Changes of the direction of bending' }),
  onBedAt: quantity('s', 'First step on the bed, time since the last pass', 0, 1e4),
  leavesAt: quantity('s', 'Leaves the bed, time since the last pass', 0, 1e6),
  bedTimeNeeded: quantity('s', 'Time needed on the bed', 0, 1e6),
  bedTimeGiven: quantity('s', 'Time the bed gives at this rhythm', 0, 1e6),
  barsOnBed: z.number().int().meta({ title: 'Bars the bed holds at this spacing' }),

  hotLength: quantity('m', 'Length coming in, hot', 0, 1000),
  coldLength: quantity('m', 'Length going out', 0, 1000),
  finalHeightCamber: camber('Camber leaving, height plane'),
  finalSideCamber: camber('Camber leaving, side plane'),
  finalRise: quantity('mm', 'Rise over the bar leaving, head outside positive', -1e5, 1e5),
  preCamberForStraight: camber('Pre-camber for a straight cold bar'),
  preRiseForStraight: quantity('mm', 'Pre-camber for a straight cold bar, rise over the bar', -1e5, 1e5),
  hookLength: quantity('m', 'Length at each end that bends free of friction', 0, 200),

  pearliteLeast: quantity('one', 'Least share of pearlite where 230 °C is passed', 0, 1),
  fastestCooling: quantity('perS', 'Fastest cooling of any node between 700 and 600 °C, K/s', 0, 1000),

  nodeX: quantities('mm', 'Nodes, across', -500, 500),
  nodeY: quantities('mm', 'Nodes, up', -500, 500),
  triangles: z.array(z.number().int()).meta({ title: 'Three nodes per triangle' }),
  pictures: z.array(SectionPicture),
  stress: quantities('MPa', 'Stress along the rail at each node, leaving', -2000, 2000),
});
export type CoolingBedRecord = z.output<typeof CoolingBedRecord>;
