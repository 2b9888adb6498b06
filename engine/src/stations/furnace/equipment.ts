import { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

export const ZoneEquipment = group({
  name: z.string().min(1),
  length: quantity('m', 'Zone length', 0.5, 80),
  /** Total exchange factor of gas, walls and steel together; practice 0.5 to 0.9, fitted to an instrumented bloom. */
  exchange: quantity('one', 'Radiation exchange factor', 0.05, 1),
  convection: quantity('wPerM2K', 'Convection of the furnace gas', 0, 200),
});
export type ZoneEquipment = z.output<typeof ZoneEquipment>;

/** Share of the zone's heat that each face gets; the view between neighbouring blooms is computed on top of it. */
export const FaceShares = group({
  top: quantity('one', 'Share of heat on the top face', 0, 1.5),
  bottom: quantity('one', 'Share of heat on the bottom face, skids in the way', 0, 1.5),
  left: quantity('one', 'Share of heat on the left face', 0, 1.5),
  right: quantity('one', 'Share of heat on the right face', 0, 1.5),
});
export type FaceShares = z.output<typeof FaceShares>;

export const FurnaceLimits = group({
  uniformity: quantity('K', 'Hottest over coldest point at drop-out, at most', 1, 200),
  skidMark: quantity('K', 'Top face over bottom face at drop-out, at most', 1, 200),
  coldGradient: quantity('K', 'Surface over core while the core is cold, at most', 20, 600),
  coldBelow: quantity('C', 'The core counts as cold below', 200, 900),
  burning: quantity('C', 'Steel is burnt above', 1100, 1450),
  scaleLoss: quantity('percent', 'Steel lost as scale, at most', 0.1, 10),
  decarburised: quantity('mm', 'Decarburised depth on the bloom, at most', 0.1, 10),
  fuel: quantity('GJPerT', 'Fuel, at most', 0.5, 12),
});
export type FurnaceLimits = z.output<typeof FurnaceLimits>;

/** A walking-beam furnace: blooms lie across it at a fixed pitch and are heated from all sides. */
export const FurnaceEquipment = group(
  {
    pitch: quantity('mm', 'Pitch of the blooms, centre to centre', 100, 2000),
    zones: z.array(ZoneEquipment).min(1).max(12),
    faces: FaceShares,
    /** Growth of scale against that in air; furnace gas with 1 to 3 % O2 about 0.5 to 0.7 (from memory, unconfirmed). */
    scaleAgainstAir: quantity('one', 'Scale growth against growth in air', 0.05, 2),
    /** Useful heat over fuel heat, with the range in which it is known. */
    efficiency: quantity('percent', 'Furnace efficiency', 10, 95),
    efficiencyLow: quantity('percent', 'Furnace efficiency, low end', 5, 95),
    efficiencyHigh: quantity('percent', 'Furnace efficiency, high end', 10, 100),
    limits: FurnaceLimits,
  },
  'The reheating furnace as built',
);
export type FurnaceEquipment = z.output<typeof FurnaceEquipment>;
