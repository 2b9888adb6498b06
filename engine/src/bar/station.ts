import { z } from 'zod';
import { FindingFile } from '../outcome/finding.ts';
import type { Result } from '../outcome/result.ts';
import { OutlineFile } from '../section/outline-file.ts';
import { group, quantities, quantity } from '../units/group.ts';
import type { Bar } from './bar.ts';
import { MeasureFile } from './measure.ts';

/** settings: what an operator can change today. equipment: what needs a workshop to change. Steel travels with the bar. */
export type Station<Settings, Equipment, Rec extends StationRecord> = (
  bar: Bar,
  settings: Settings,
  equipment: Equipment,
) => Result<{ readonly bar: Bar; readonly record: Rec }>;

const celsius = (title: string) => quantity('C', title, -50, 1600);

/** Temperatures of the section at one place along the bar. */
export const Temperatures = group({
  clock: quantity('s', 'Time since the furnace door', -1e5, 1e6),
  mean: celsius('Mean over the section'),
  surface: celsius('Mean along the surface'),
  core: celsius('Farthest from the surface'),
  coldest: celsius('Coldest point'),
  hottest: celsius('Hottest point'),
});
export type Temperatures = z.output<typeof Temperatures>;

/** A picture of the bar at one moment, small enough to keep for every station. */
export const BarSnapshot = group({
  outline: OutlineFile,
  area: quantity('mm2', 'Section, hot', 0, 1e6),
  length: quantity('m', 'Length, hot', 0, 1000),
  mass: quantity('kg', 'Mass', 0, 1e5),
  pieces: quantities('m', 'Pieces, hot', 0, 1000),
  places: z.strictObject({ head: Temperatures, middle: Temperatures, tail: Temperatures }),
});
export type BarSnapshot = z.output<typeof BarSnapshot>;

/**
 * Every kilogram and joule of one visit, for the whole bar. Heat contents count from 20 °C.
 * massLost by name: scale, crop, kerf, sample, scrap; its sum is massIn − massOut.
 * energyGained by name and sign: furnace, radiation, convection, water, rolls, deformation, friction, and
 * leftWithMass for the heat in steel that left; its sum is energyOut − energyIn.
 */
export const Balance = z.strictObject({
  massInKg: z.number(),
  massOutKg: z.number(),
  massLostKg: z.record(z.string(), z.number()),
  energyInJ: z.number(),
  energyOutJ: z.number(),
  energyGainedJ: z.record(z.string(), z.number()),
});
export type Balance = z.output<typeof Balance>;

/** What every station writes down about its visit, to be spread into the shape of its own record. */
export const recordShape = {
  leaving: BarSnapshot,
  balance: Balance,
  measures: z.array(MeasureFile),
  findings: z.array(FindingFile),
};

/** Plain data in SI (°C for temperatures); page, CLI and sheets read it and never recompute. */
export interface StationRecord {
  /** 'furnace', 'descaler', 'pass', 'saws', 'cooling-bed', 'straighteners' or 'yard'. */
  readonly kind: string;
  readonly leaving: BarSnapshot;
  readonly balance: Balance;
  /** What stands against a limit here, in the order a technologist reads it. */
  readonly measures: readonly z.output<typeof MeasureFile>[];
  readonly findings: readonly z.output<typeof FindingFile>[];
}
