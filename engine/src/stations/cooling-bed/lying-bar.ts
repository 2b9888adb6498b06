import type { Bar, Place } from '../../bar/bar.ts';
import { meanEnthalpy } from '../../bar/heat-content.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { carriedOver } from '../../section/locate.ts';
import { nodeCount, type TriMesh } from '../../section/mesh.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { moved, movedMesh, turned, turnedMesh } from '../../section/transform.ts';
import { triangulate } from '../../section/triangulate.ts';
import { heatingLaw } from '../../steel/heating.ts';

/** Nodes with which camber is within 0.05/km of a finer mesh and the bed within half a second. */
const suitable = { fewest: 240, most: 600, elements: 330 };

/** A bar whose mesh suits the bed: its own, or its outline meshed anew with the heat of each place kept. */
export interface MeshedBar {
  readonly bar: Bar;
  /** K added to every node of a place to keep its heat; the largest of the three. 0 where the mesh was kept. */
  readonly correction: number;
}

export function meshedForBed(bar: Bar): Result<MeshedBar> {
  const nodes = nodeCount(bar.mesh);
  if (nodes >= suitable.fewest && nodes <= suitable.most) return ok({ bar, correction: 0 });
  const { area } = sectionProperties(bar.outline);
  const size = 1.35 * Math.sqrt(area / suitable.elements);
  const made = triangulate(bar.outline, { size, smallest: size / 2.5 });
  if (!made.ok) return made;
  const mesh = made.value;
  let correction = 0;
  const carried = (place: Place): Place => {
    const temperature = carriedOver(bar.mesh, place.temperature, mesh);
    const shift = heatKeepingShift(bar, place, mesh, temperature);
    correction = Math.max(correction, Math.abs(shift));
    return { ...place, temperature: temperature.map((T) => T + shift) };
  };
  const places = { head: carried(bar.head), middle: carried(bar.middle), tail: carried(bar.tail) };
  return ok({ bar: { ...bar, mesh, ...places }, correction });
}

/** K by which interpolated temperatures must be raised so that the mean enthalpy is what it was. */
function heatKeepingShift(bar: Bar, place: Place, mesh: TriMesh, temperature: Float64Array): number {
  const law = heatingLaw(bar.grade);
  const wanted = meanEnthalpy(bar.mesh, place.temperature, law);
  let shift = 0;
  for (let step = 0; step < 20; step++) {
    const at = (more: number) =>
      meanEnthalpy(
        mesh,
        temperature.map((T) => T + shift + more),
        law,
      );
    const missing = wanted - at(0);
    if (Math.abs(missing) < 1e-9 * wanted) break;
    shift += missing / (at(0.5) - at(-0.5));
  }
  return shift;
}

/** Outline and mesh upright: foot underside at y = 0, axis at x = 0. The bar arrives lying, x from foot to crown. */
export function uprightSection(bar: Bar): { readonly outline: Outline; readonly mesh: TriMesh } {
  const standing = turned(bar.outline, Math.PI / 2);
  const { left, right, bottom } = sectionProperties(standing).bounds;
  const [dx, dy] = [-(left + right) / 2, -bottom];
  return {
    outline: moved(standing, dx, dy),
    mesh: movedMesh(turnedMesh(bar.mesh, Math.PI / 2), dx, dy),
  };
}
