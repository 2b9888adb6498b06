import type { Bar, Place } from '../../bar/bar.ts';
import { balanceOf, meanEnthalpy } from '../../bar/heat-content.ts';
import { snapshotOf } from '../../bar/snapshot.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { meanOver } from '../../section/mesh.ts';
import { sectionProperties } from '../../section/properties.ts';
import { scaled, scaledMesh } from '../../section/transform.ts';
import { hotFactor } from '../../steel/expansion.ts';
import { heatingLaw } from '../../steel/heating.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import type { FurnaceEquipment } from './equipment.ts';
import { findingsOf } from './findings.ts';
import { type Heating, heated, zoneTimes } from './heating.ts';
import { heatingRules } from './heating-rules.ts';
import { measuresOf } from './measures.ts';
import type { FurnaceRecord } from './record.ts';
import type { FurnaceSettings } from './settings.ts';
import { type SkinLoss, skinLoss } from './skin-loss.ts';

/**
 * From the charging door to the dropping-out door: the section is heated zone after zone, grows, scales and loses carbon
 * at its skin. Head, middle and tail leave alike, with their clocks at 0. The outline grows with the mean temperature
 * and keeps its nominal size: what scale takes (about 1 %) leaves the mass, not the shape.
 *
 * Fails when blooms touch or the zones of plan and furnace differ in number, and when conduction does not settle.
 */
export function furnace(
  bar: Bar,
  settings: FurnaceSettings,
  equipment: FurnaceEquipment,
): Result<{ readonly bar: Bar; readonly record: FurnaceRecord }> {
  const unfit = misfit(bar, settings, equipment);
  if (unfit) return fail({ model: 'furnace', reason: unfit });
  const law = heatingLaw(bar.grade);
  const heating = heated(bar, law, settings, equipment);
  if (!heating.ok) return heating;
  const skin = skinLoss(heating.value.curves, equipment.scaleAgainstAir);
  const leaving = droppedOut(bar, heating.value, skin);
  const numbers = numbersOf(bar, leaving, heating.value, skin, settings, equipment, law);
  const measures = measuresOf(numbers, equipment);
  const record: FurnaceRecord = {
    kind: 'furnace',
    leaving: snapshotOf(leaving),
    balance: ledger(bar, leaving, heating.value, law),
    measures,
    findings: findingsOf(numbers, measures, settings, equipment, law),
    ...numbers,
  };
  return ok({ bar: leaving, record });
}

function misfit(bar: Bar, settings: FurnaceSettings, equipment: FurnaceEquipment): string | undefined {
  const { bounds } = sectionProperties(bar.outline);
  const width = bounds.right - bounds.left;
  if (settings.zones.length !== equipment.zones.length) {
    return `the furnace has ${equipment.zones.length} zones, the plan gives ${settings.zones.length} temperatures`;
  }
  if (width >= equipment.pitch) {
    const [wide, pitch] = [width, equipment.pitch].map((each) => (each * 1e3).toFixed(0));
    return `blooms ${wide} mm wide do not fit on a pitch of ${pitch} mm`;
  }
  return undefined;
}

/** The hot bar at the door. */
function droppedOut(bar: Bar, { temperature }: Heating, skin: SkinLoss): Bar {
  const [before, after] = [bar.middle.temperature, temperature].map((T) =>
    hotFactor(bar.grade, meanOver(bar.mesh, T)),
  );
  const growth = after / before;
  const outline = scaled(bar.outline, growth);
  const { area, perimeter } = sectionProperties(outline);
  const length = bar.length * growth;
  const lost = skin.metal * (perimeter * length + 2 * area);
  const place: Place = { clock: 0, temperature };
  return {
    ...bar,
    outline,
    mesh: scaledMesh(bar.mesh, growth),
    head: place,
    middle: place,
    tail: place,
    mass: bar.mass - lost,
    length,
    pieces: bar.pieces.map((piece) => piece * growth),
    decarburised: skin.decarburised,
    scale: skin.scale,
  };
}

function numbersOf(
  bar: Bar,
  leaving: Bar,
  { curves, zones, temperature }: Heating,
  { scale, decarburised }: SkinLoss,
  { rhythm }: FurnaceSettings,
  equipment: FurnaceEquipment,
  law: ThermalLaw,
) {
  const { bounds } = sectionProperties(bar.outline);
  const usefulHeat =
    meanEnthalpy(bar.mesh, temperature, law) - meanEnthalpy(bar.mesh, bar.middle.temperature, law);
  return {
    residence: zoneTimes(equipment, rhythm).reduce((sum, time) => sum + time, 0),
    bloomsInside: equipment.zones.reduce((sum, { length }) => sum + length, 0) / equipment.pitch,
    zones: [...zones],
    curves,
    section: { xy: [...bar.mesh.xy], triangles: [...bar.mesh.triangles] },
    scaleThickness: scale,
    scaleLoss: (bar.mass - leaving.mass) / bar.mass,
    decarburised,
    usefulHeat,
    fuel: usefulHeat / equipment.efficiency,
    fuelLow: usefulHeat / equipment.efficiencyHigh,
    fuelHigh: usefulHeat / equipment.efficiencyLow,
    rules: heatingRules(Math.min(bounds.right - bounds.left, bounds.top - bounds.bottom)),
  };
}

/** Scale is reckoned to leave at the door, as warm as the bloom. Its heat of burning stays with the furnace gas. */
function ledger(bar: Bar, leaving: Bar, { taken, temperature }: Heating, law: ThermalLaw) {
  const lost = bar.mass - leaving.mass;
  const leftWithMass = -lost * meanEnthalpy(bar.mesh, temperature, law);
  return balanceOf(bar, leaving, { scale: lost }, { furnace: taken, leftWithMass }, law);
}
