import { z } from 'zod';
import { charge } from '../bar/charge.ts';
import type { StationRecord } from '../bar/station.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { coolingBed } from '../stations/cooling-bed/cooling-bed.ts';
import { CoolingBedEquipment } from '../stations/cooling-bed/equipment.ts';
import { CoolingBedSettings } from '../stations/cooling-bed/settings.ts';
import { descaler } from '../stations/descaler/descaler.ts';
import { DescalerEquipment } from '../stations/descaler/equipment.ts';
import { DescalerSettings } from '../stations/descaler/settings.ts';
import { FurnaceEquipment } from '../stations/furnace/equipment.ts';
import { furnace } from '../stations/furnace/furnace.ts';
import { FurnaceSettings } from '../stations/furnace/settings.ts';
import { SawEquipment } from '../stations/saws/equipment.ts';
import { saws } from '../stations/saws/saws.ts';
import { SawSettings } from '../stations/saws/settings.ts';
import { Stand } from '../stations/stands/equipment.ts';
import { pass } from '../stations/stands/pass.ts';
import { PassSettings } from '../stations/stands/settings.ts';
import { StraightenersEquipment } from '../stations/straighteners/equipment.ts';
import { StraightenersSettings } from '../stations/straighteners/settings.ts';
import { straighteners } from '../stations/straighteners/straighteners.ts';
import { YardEquipment } from '../stations/yard/equipment.ts';
import { YardSettings } from '../stations/yard/settings.ts';
import { yard } from '../stations/yard/yard.ts';
import { gradeNamed } from '../steel/grades.ts';
import { choice, group, quantity } from '../units/group.ts';
import { type Issue, issuesOf } from '../units/issue.ts';
import { barOf, CaseBar, coldBarOf } from './case-bar.ts';
import { Bloom, RailsOrdered } from './order.ts';

/** One station alone, for a question that needs no line around it. Which station is said in the file. */
export const StationCase = choice('station', [
  group({
    station: z.literal('furnace'),
    grade: z.string(),
    bloom: Bloom,
    settings: FurnaceSettings,
    equipment: FurnaceEquipment,
  }),
  group({
    station: z.literal('descaler'),
    bar: CaseBar,
    settings: DescalerSettings,
    equipment: DescalerEquipment,
  }),
  group({ station: z.literal('pass'), bar: CaseBar, settings: PassSettings, equipment: Stand }),
  group({ station: z.literal('saws'), bar: CaseBar, settings: SawSettings, equipment: SawEquipment }),
  group({
    station: z.literal('cooling-bed'),
    bar: CaseBar,
    settings: CoolingBedSettings,
    equipment: CoolingBedEquipment,
  }),
  group({
    station: z.literal('straighteners'),
    bar: CaseBar,
    heightCamber: quantity('perKm', 'Camber coming in, height plane, head longer positive', -20, 20),
    sideCamber: quantity('perKm', 'Camber coming in, side plane', -20, 20),
    settings: StraightenersSettings,
    equipment: StraightenersEquipment,
  }),
  group({
    station: z.literal('yard'),
    bar: CaseBar,
    rails: z.array(RailsOrdered).min(1).max(20),
    bloomMass: quantity('kg', 'Mass of the bloom it was rolled from', 100, 50_000),
    settings: YardSettings,
    equipment: YardEquipment,
  }),
]);
export type StationCase = z.output<typeof StationCase>;

export type CaseReading =
  | { readonly ok: true; readonly value: StationCase }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads a case file's content: the case in SI, or every issue at once. */
export function readCase(content: unknown): CaseReading {
  const parsed = StationCase.safeParse(content);
  return parsed.success
    ? { ok: true, value: parsed.data }
    : { ok: false, issues: issuesOf(parsed.error, content) };
}

/** Sends the bar of a case through its one station. */
export function runCase(given: StationCase): Result<StationRecord> {
  const visit = visitOf(given);
  return visit.ok ? ok(visit.value.record) : visit;
}

function visitOf(given: StationCase): Result<{ readonly record: StationRecord }> {
  if (given.station === 'furnace') {
    const grade = gradeNamed(given.grade);
    if (!grade) return fail({ model: 'case', reason: `grade ${given.grade} is not in the library` });
    const bar = charge(given.bloom, grade);
    return bar.ok ? furnace(bar.value, given.settings, given.equipment) : bar;
  }
  const bar =
    given.station === 'straighteners'
      ? coldBarOf(given.bar, given.heightCamber, given.sideCamber)
      : barOf(given.bar);
  if (!bar.ok) return bar;
  switch (given.station) {
    case 'descaler':
      return descaler(bar.value, given.settings, given.equipment);
    case 'pass':
      return pass(bar.value, given.settings, given.equipment);
    case 'saws':
      return saws(bar.value, given.settings, given.equipment);
    case 'cooling-bed':
      return coolingBed(bar.value, given.settings, given.equipment);
    case 'straighteners':
      return straighteners(bar.value, given.settings, given.equipment);
    case 'yard':
      return yard(
        bar.value,
        { ...given.settings, rails: given.rails, bloomMass: given.bloomMass },
        given.equipment,
      );
  }
}
