import type { Bar } from '../../bar/bar.ts';
import { deepestNode, extremes } from '../../bar/snapshot.ts';
import type { Field } from '../../outcome/field.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { conduct } from '../../phenomena/conduction/conduct.ts';
import { type Conductor, conductor } from '../../phenomena/conduction/conductor.ts';
import { meanAlong } from '../../phenomena/conduction/surface.ts';
import { meanOver, type TriMesh } from '../../section/mesh.ts';
import { sectionProperties } from '../../section/properties.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import type { FurnaceEquipment } from './equipment.ts';
import { zoneHeat } from './faces.ts';
import type { HeatingCurves, ZoneVisit } from './record.ts';
import type { FurnaceSettings } from './settings.ts';

/** A bloom's way through all zones. */
export interface Heating {
  readonly temperature: Field;
  readonly curves: Writable<HeatingCurves>;
  readonly zones: readonly ZoneVisit[];
  /** J, for the whole bloom. */
  readonly taken: number;
}

type Writable<T> = { [K in keyof T]: T[K] extends readonly number[] ? number[] : T[K] };

/** s that a bloom stays in each zone: the furnace moves by one pitch every `rhythm`. */
export const zoneTimes = ({ zones, pitch }: FurnaceEquipment, rhythm: number): number[] =>
  zones.map(({ length }) => (length / pitch) * rhythm);

/** Conduction in the section at its charging size, zone after zone; one section stands for the whole length. */
export function heated(
  bar: Bar,
  law: ThermalLaw,
  settings: FurnaceSettings,
  equipment: FurnaceEquipment,
): Result<Heating> {
  const body = conductor(bar.mesh);
  const { bounds } = sectionProperties(bar.outline);
  const gap = equipment.pitch - (bounds.right - bounds.left);
  const height = bounds.top - bounds.bottom;
  const durations = zoneTimes(equipment, settings.rhythm);
  const massPerMetre = bar.mass / bar.length;
  const curves = emptyCurves();
  const write = scribe(body, curves);
  const zones: ZoneVisit[] = [];
  let temperature: Field = bar.middle.temperature;
  let [entered, taken] = [0, 0];
  for (const [z, zone] of equipment.zones.entries()) {
    const gas = settings.zones[z].temperature;
    const surface = [zoneHeat(body.skin, zone, gas, equipment.faces, gap, height)];
    const visit = conduct(body, { massPerMetre, law, surface }, { temperature }, durations[z], {
      ...steps,
      observe: (time, T) => write(entered + time, gas, T),
    });
    if (!visit.ok) return visit;
    temperature = visit.value.temperature;
    const heat = visit.value.gained.furnace * bar.length;
    zones.push(zoneVisit(zone.name, gas, entered, entered + durations[z], heat, temperature));
    entered += durations[z];
    taken += heat;
  }
  return ok({ temperature, curves, zones, taken });
}

/** Two kelvin a step: the maps are drawn to five. */
const steps = { tolerance: 1, firstStep: 5, largestStep: 600 };

function zoneVisit(
  name: string,
  gas: number,
  enters: number,
  leaves: number,
  heat: number,
  section: Field,
): ZoneVisit {
  const { lowest, highest } = extremes(section);
  return { name, gas, enters, leaves, heat, coldest: lowest, hottest: highest, section: [...section] };
}

const emptyCurves = (): Writable<HeatingCurves> => ({
  time: [],
  gas: [],
  mean: [],
  core: [],
  surface: [],
  top: [],
  bottom: [],
  coldest: [],
  hottest: [],
});

/** Writes one moment into the curves; two moments of one time stand where a zone begins. */
function scribe({ mesh, skin }: Conductor, curves: Writable<HeatingCurves>) {
  const core = deepestNode(mesh);
  const [top, bottom] = [middleOf(mesh, 1), middleOf(mesh, -1)];
  return (time: number, gas: number, T: Field): void => {
    const { lowest, highest } = extremes(T);
    curves.time.push(time);
    curves.gas.push(gas);
    curves.mean.push(meanOver(mesh, T));
    curves.core.push(T[core]);
    curves.surface.push(meanAlong(skin, T));
    curves.top.push(T[top]);
    curves.bottom.push(T[bottom]);
    curves.coldest.push(lowest);
    curves.hottest.push(highest);
  };
}

/** The node nearest to the middle of the upper (side 1) or lower (side −1) face. */
function middleOf({ xy }: TriMesh, side: 1 | -1): number {
  const [xs, ys] = [extremes(every(xy, 0)), extremes(every(xy, 1))];
  const [x, y] = [(xs.lowest + xs.highest) / 2, side > 0 ? ys.highest : ys.lowest];
  let [nearest, least] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i < xy.length / 2; i++) {
    const away = Math.hypot(xy[2 * i] - x, xy[2 * i + 1] - y);
    if (away < least) [nearest, least] = [i, away];
  }
  return nearest;
}

const every = (xy: Field, axis: 0 | 1): Float64Array =>
  Float64Array.from({ length: xy.length / 2 }, (_, i) => xy[2 * i + axis]);
