import { z } from 'zod';
import { recordShape } from '../../bar/station.ts';
import { group, quantities, quantity } from '../../units/group.ts';

const celsius = (title: string) => quantities('C', title, -50, 1600);

export const ZoneVisit = group({
  name: z.string(),
  gas: quantity('C', 'Zone temperature', 20, 1400),
  enters: quantity('s', 'Time at the zone entry', 0, 1e6),
  leaves: quantity('s', 'Time at the zone exit', 0, 1e6),
  heat: quantity('MJ', 'Heat taken in this zone', -1e5, 1e5),
  coldest: quantity('C', 'Coldest point at the zone exit', -50, 1600),
  hottest: quantity('C', 'Hottest point at the zone exit', -50, 1600),
  /** °C at each node of `section`. */
  section: celsius('Section at the zone exit'),
});
export type ZoneVisit = z.output<typeof ZoneVisit>;

/** Rows of equal length, from charging to the door. */
export const HeatingCurves = group({
  time: quantities('s', 'Time in the furnace', 0, 1e6),
  gas: celsius('Zone temperature'),
  mean: celsius('Mean of the section'),
  core: celsius('Core'),
  surface: celsius('Mean along the surface'),
  top: celsius('Middle of the top face'),
  bottom: celsius('Middle of the bottom face, skid side'),
  coldest: celsius('Coldest point'),
  hottest: celsius('Hottest point'),
});
export type HeatingCurves = z.output<typeof HeatingCurves>;

export const FurnaceRecord = group(
  {
    kind: z.literal('furnace'),
    ...recordShape,
    residence: quantity('min', 'Time in the furnace', 1, 1e5),
    bloomsInside: quantity('one', 'Blooms inside', 0, 1e4),
    zones: z.array(ZoneVisit),
    curves: HeatingCurves,
    /** The mesh under the section maps: node i at (xy[2i], xy[2i + 1]); three node numbers per triangle. */
    section: group({
      xy: quantities('mm', 'Nodes of the section', -1e4, 1e4),
      triangles: z.array(z.int().min(0)),
    }),
    scaleThickness: quantity('mm', 'Scale thickness', 0, 50),
    scaleLoss: quantity('percent', 'Steel lost as scale', 0, 100),
    decarburised: quantity('mm', 'Decarburised depth', 0, 50),
    usefulHeat: quantity('kJPerKg', 'Useful heat', -2000, 2000),
    fuel: quantity('GJPerT', 'Fuel', 0, 50),
    fuelLow: quantity('GJPerT', 'Fuel, low end', 0, 50),
    fuelHigh: quantity('GJPerT', 'Fuel, high end', 0, 50),
    /** What the rules of thumb would have given, for comparison only. */
    rules: group({
      taits: quantity('min', 'Heating time after Taits', 0, 1e5),
      low: quantity('min', 'Heating time by thickness, high carbon, low end', 0, 1e5),
      high: quantity('min', 'Heating time by thickness, high carbon, high end', 0, 1e5),
    }),
  },
  'What happened to the bloom in the reheating furnace',
);
export type FurnaceRecord = z.output<typeof FurnaceRecord>;
