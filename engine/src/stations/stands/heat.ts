import { carried, warm } from '../../bar/carry.ts';
import type { Field } from '../../outcome/field.ts';
import type { Skin } from '../../phenomena/conduction/surface.ts';
import { deformationHeat, heatShare } from '../../phenomena/rolling/deformation-heat.ts';
import type { TriMesh } from '../../section/mesh.ts';
import type { HeatingLaw } from '../../steel/heating.ts';
import { flowBack } from './column-flow.ts';
import type { Element } from './elements.ts';
import type { Rolled } from './exit-section.ts';
import { leftOf, rightOf } from './half-section/measure.ts';
import type { Loads } from './loads.ts';

/** Of the work that the rolls do against friction, the bar keeps half (common practice, no source). */
const frictionShare = 0.5;

/** °C of each element: mean over the nodes between its ends, weighted with their areas; the whole bar's where it has none. */
export function elementTemperatures(
  { xy }: TriMesh,
  areas: Field,
  temperature: Field,
  elements: readonly Element[],
): number[] {
  return elements.map(({ from, to }) => {
    let [sum, area, all, whole] = [0, 0, 0, 0];
    for (let i = 0; i < areas.length; i++) {
      const inside = xy[2 * i] >= from - onEdge && xy[2 * i] <= to + onEdge;
      all += areas[i] * temperature[i];
      whole += areas[i];
      if (!inside) continue;
      sum += areas[i] * temperature[i];
      area += areas[i];
    }
    return area > 0 ? sum / area : all / whole;
  });
}

/** A node on the edge of an element belongs to it, whatever its last digits, m. */
const onEdge = 1e-9;

/**
 * Share of each boundary edge of the entering bar that a roll will touch, times `growth`: how much larger the skin is on
 * its mean way through the bite. Upper and lower faces touch where the leaving section does; foot back and head face
 * where vertical rolls stand.
 */
export function touchedEdges(
  skin: Skin,
  mesh: TriMesh,
  rolled: Rolled,
  vertical: boolean,
  growth: number,
): Float64Array {
  const [left, right] = [leftOf(rolled.entry), rightOf(rolled.entry)];
  const outer = 0.15 * (right - left);
  return Float64Array.from({ length: skin.edges }, (_, e) => {
    const [a, b] = [skin.node[2 * e], skin.node[2 * e + 1]];
    const x = (mesh.xy[2 * a] + mesh.xy[2 * b]) / 2;
    if (vertical && skin.nx[e] < -0.8 && x < left + outer) return growth;
    if (vertical && skin.nx[e] > 0.8 && x > right - outer) return growth;
    const there = rolled.across(x);
    const under = rolled.runs.some(({ touching, x0, x1 }) => touching && there >= x0 && there <= x1);
    return under && Math.abs(skin.ny[e]) > 0.2 ? growth : 0;
  });
}

/** The fields of head, middle and tail on the leaving section, without the heat of deformation. */
export function redrawn(
  from: TriMesh,
  to: TriMesh,
  rolled: Rolled,
  fields: readonly Field[],
  law: HeatingLaw,
) {
  return carried(from, to, flowBack(rolled.entry, rolled.exit), fields, law);
}

/**
 * Heat of deformation, element by element, and what the rolls' work leaves beyond it as friction on the skin; both in
 * place on a field of the leaving section. Returns the mean of each, J/kg.
 *
 * work   of the rolls, J per kg of bar.
 */
export function warmedByWork(
  field: Float64Array,
  mesh: TriMesh,
  areas: Field,
  loads: Loads,
  rolled: Rolled,
  work: number,
  density: number,
  law: HeatingLaw,
): { readonly deformation: number; readonly friction: number } {
  const ends = loads.elements.map(({ element: { to } }) => rolled.across(to));
  const each = loads.elements.map(({ pass, strain }) => deformationHeat(pass.flowStress, strain, density));
  const heat = new Float64Array(field.length);
  let [deformation, area] = [0, 0];
  for (let i = 0; i < field.length; i++) {
    const element = ends.findIndex((end, k) => mesh.xy[2 * i] <= end || k === ends.length - 1);
    heat[i] = each[element];
    deformation += areas[i] * heat[i];
    area += areas[i];
  }
  deformation /= area;
  const friction = frictionShare * Math.max(0, work - deformation / heatShare);
  addOnSkin(heat, mesh, areas, friction * area);
  warm(field, heat, law);
  return { deformation, friction };
}

/** `amount`, J/kg·m² over the section, shared among the nodes of the skin. */
function addOnSkin(heat: Float64Array, { boundary }: TriMesh, areas: Field, amount: number): void {
  let skin = 0;
  for (let e = 0; e < boundary.length; e += 2) skin += areas[boundary[e]];
  for (let e = 0; e < boundary.length; e += 2) heat[boundary[e]] += amount / skin;
}
