import type { Bar, Place } from '../../bar/bar.ts';
import { deepestNode, extremes } from '../../bar/snapshot.ts';
import type { Field } from '../../outcome/field.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { conductFor } from '../../phenomena/conduction/conduct.ts';
import { type Conductor, conductor } from '../../phenomena/conduction/conductor.ts';
import { faceOf } from '../../phenomena/conduction/face.ts';
import { meanAlong, type SurfaceChannel, type SurfaceHeat } from '../../phenomena/conduction/surface.ts';
import { residualWater } from '../../phenomena/jets/residual-water.ts';
import { heatTaken, skinDrop, type ThickBody } from '../../phenomena/jets/sudden-film.ts';
import { freeSurface } from '../../phenomena/radiation/free-surface.ts';
import { scaledSteel } from '../../phenomena/radiation/grey.ts';
import { meanOver } from '../../section/mesh.ts';
import { density } from '../../steel/expansion.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import type { DescalerEquipment } from './equipment.ts';
import type { Jets } from './jets.ts';
import type { DescaledPlace, DescalerRecord } from './record.ts';
import type { DescalerSettings } from './settings.ts';

/** One place of the bar after its way from the furnace door through the jets. */
export interface Passage {
  readonly place: Place;
  readonly told: DescaledPlace;
  readonly curves: DescalerRecord['curves'];
  /** J per metre of bar, by channel. */
  readonly gained: Readonly<Record<string, number>>;
}

/** The way of every place of one bar: what they share is prepared once. */
export function passages(
  bar: Bar,
  law: ThermalLaw,
  jets: Jets,
  settings: DescalerSettings,
  equipment: DescalerEquipment,
): (place: Place, behindHead: number) => Result<Passage> {
  const body = conductor(bar.mesh);
  const core = deepestNode(bar.mesh);
  const massPerMetre = bar.mass / bar.length;
  const air = freeSurface(scaledSteel, equipment.ambient, settings.speed);
  return (place, behindHead) => {
    const trace = tracer(body, core, place);
    const gained: Record<string, number> = {};
    let temperature = place.temperature;
    let failed: Result<never> | undefined;
    /** A stretch of the way; after a failure nothing more is computed. */
    const along = (surface: SurfaceHeat, duration: number, steps: number): void => {
      if (failed || duration <= 0) return;
      const end = conductFor(
        body,
        { massPerMetre, law, surface },
        { temperature },
        duration,
        steps,
        trace.note,
      );
      if (!end.ok) {
        failed = end;
        return;
      }
      temperature = end.value.temperature;
      for (const [name, heat] of Object.entries(end.value.gained)) gained[name] = (gained[name] ?? 0) + heat;
      trace.pass(duration);
    };

    along(air, settings.transfer + behindHead / settings.speed, 6);
    const before = temperature;
    const arrives = trace.clock();
    along([jetChannel(body, before, law, jets, equipment)], jets.underJet, 1);
    along([wetChannel(body, jets, equipment), ...air], equipment.wetLength / settings.speed, 2);
    along(air, settings.runOut, 5);
    if (failed) return failed;
    const told: DescaledPlace = {
      arrives,
      meanBefore: meanOver(bar.mesh, before),
      surfaceBefore: meanAlong(body.skin, before),
      surfaceLowest: lowestUnderJets(body, before, law, jets, equipment),
      surfaceAfter: meanAlong(body.skin, temperature),
      meanAfter: meanOver(bar.mesh, temperature),
    };
    return ok({ place: { clock: trace.clock(), temperature }, told, curves: trace.curves, gained });
  };
}

function tracer({ mesh, skin }: Conductor, core: number, place: Place) {
  const curves = {
    time: [] as number[],
    mean: [] as number[],
    surface: [] as number[],
    core: [] as number[],
  };
  let clock = place.clock;
  const note = (time: number, T: Field): void => {
    curves.time.push(clock + time);
    curves.mean.push(meanOver(mesh, T));
    curves.surface.push(meanAlong(skin, T));
    curves.core.push(T[core]);
  };
  note(0, place.temperature);
  return { curves, note, clock: () => clock, pass: (duration: number) => (clock += duration) };
}

/**
 * The jets are too quick and too fierce for the mesh: the exact heat of a thick body, ring after ring, is taken evenly
 * over the time under them.
 */
function jetChannel(
  { skin }: Conductor,
  before: Field,
  law: ThermalLaw,
  { covered, underJet }: Jets,
  { jetHeatTransfer, waterTemperature, rings }: DescalerEquipment,
): SurfaceChannel {
  const perRing = underJet / rings;
  const flux = Float64Array.from({ length: 2 * skin.edges }, (_, end) => {
    const T = before[skin.node[end]];
    const perKelvin = heatTaken(jetHeatTransfer, perRing, thickBody(law, T)) / perRing;
    return -covered[faceOf(skin, end >> 1)] * perKelvin * (T - waterTemperature);
  });
  return { name: 'water', heat: (_surface, _time, out) => out.set(flux) };
}

/** Water that runs along the faces which have jets. */
function wetChannel(
  { skin }: Conductor,
  { covered }: Jets,
  { wetFlux, waterTemperature }: DescalerEquipment,
): SurfaceChannel {
  const wet = Float64Array.from({ length: skin.edges }, (_, e) => (covered[faceOf(skin, e)] > 0 ? 1 : 0));
  return {
    name: 'water',
    heat(surface, _time, flux, slope) {
      for (let end = 0; end < flux.length; end++) {
        const over = surface[end] - waterTemperature;
        const h = wet[end >> 1] * residualWater(wetFlux, over);
        flux[end] = -h * over;
        slope[end] -= h;
      }
    },
  };
}

function lowestUnderJets(
  { skin }: Conductor,
  before: Field,
  law: ThermalLaw,
  { underJet }: Jets,
  { jetHeatTransfer, waterTemperature, rings }: DescalerEquipment,
): number {
  const T = extremes(Float64Array.from(skin.node, (node) => before[node])).lowest;
  const drop = skinDrop(jetHeatTransfer, underJet / rings, thickBody(law, T));
  return T - drop * (T - waterTemperature);
}

const thickBody = (law: ThermalLaw, T: number): ThickBody => ({
  conductivity: law.conductivity(T),
  density: density(T),
  heatCapacity: law.heatCapacity(T),
});
