import type { Bar } from '../../bar/bar.ts';
import { type FaceName, faceNames } from '../../phenomena/conduction/face.ts';
import { flowAt, footprint, impactPressure, jetForce } from '../../phenomena/jets/jet.ts';
import { sectionProperties } from '../../section/properties.ts';
import { coverageOf } from './coverage.ts';
import type { DescalerEquipment } from './equipment.ts';
import type { DescaledFace } from './record.ts';
import type { DescalerSettings } from './settings.ts';

/** What the water does, whatever the bar's temperature. */
export interface Jets {
  readonly force: number;
  readonly impact: number;
  readonly width: number;
  readonly depth: number;
  /** s under all rings together. */
  readonly underJet: number;
  /** m³/s of all nozzles. */
  readonly flow: number;
  readonly faces: readonly DescaledFace[];
  /** Share of each face under a jet, 0 to 1. */
  readonly covered: Readonly<Record<FaceName, number>>;
}

export function jetsOn(bar: Bar, { pressure, speed }: DescalerSettings, equipment: DescalerEquipment): Jets {
  const { nozzles, rings, standOff, sprayAngle, sprayDepthAngle, leadAngle } = equipment;
  const perNozzle = flowAt(pressure, equipment.nozzleFlow, equipment.ratedPressure);
  const print = footprint(standOff, sprayAngle, sprayDepthAngle, leadAngle);
  const force = jetForce(perNozzle, pressure);
  const count = nozzles.top + nozzles.bottom + nozzles.left + nozzles.right;
  const faces = facesUnder(bar, print.width, equipment);
  return {
    force,
    impact: impactPressure(force, print, leadAngle, equipment.impactEfficiency),
    width: print.width,
    depth: print.depth,
    underJet: (rings * print.depth) / speed,
    flow: rings * count * perNozzle,
    faces,
    covered: Object.fromEntries(faces.map(({ face, covered }) => [face, covered])) as Record<
      FaceName,
      number
    >,
  };
}

function facesUnder(bar: Bar, spray: number, { nozzles, nozzlePitch }: DescalerEquipment): DescaledFace[] {
  const { bounds } = sectionProperties(bar.outline);
  return faceNames.map((face) => {
    const flat = face === 'top' || face === 'bottom';
    const width = flat ? bounds.right - bounds.left : bounds.top - bounds.bottom;
    return { face, width, ...coverageOf(nozzles[face], spray, nozzlePitch, width) };
  });
}
