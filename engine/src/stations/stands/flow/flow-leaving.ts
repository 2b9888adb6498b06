import { shiftToHeat, warm } from '../../../bar/carry.ts';
import { meanEnthalpy } from '../../../bar/heat-content.ts';
import type { Field } from '../../../outcome/field.ts';
import { carriedSquares, drawnOn } from '../../../phenomena/metal-flow/drawn-squares/carried-through.ts';
import { wholeXy } from '../../../phenomena/metal-flow/meshing/whole.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import { nodeAreas, type TriMesh } from '../../../section/mesh.ts';
import type { Course } from '../course.ts';
import { gainedBy, type Left, longer } from '../leaving.ts';
import type { VisitOfPlace } from '../visits.ts';
import type { Ahead } from './ahead.ts';
import { onImages } from './entering-mesh.ts';

/** The bar behind the stand: its mesh is that of the flow where it left it, warmed node by node by the work done there. */
export function flowLeaving(
  { bar, prepared, entering: { whole }, law }: Ahead,
  course: Course,
  solution: FlowSolution,
  visits: readonly VisitOfPlace[],
): Left {
  const { sections, strain } = solution;
  const { squares } = prepared.entry;
  const { part: _, ...entering } = whole;
  const mesh: TriMesh = { ...entering, xy: wholeXy(solution.mesh, sections[sections.length - 1].xy) };
  const areas = nodeAreas(mesh);
  const work = workOf(solution, prepared.entry.density);
  const heat = spread(onImages(whole, solution.heat), areas, work.deformation + work.friction);
  const corrections: number[] = [];
  const temperatures = visits.map(({ chilled }) => {
    const row = Float64Array.from(chilled);
    corrections.push(shiftToHeat(row, areas, meanEnthalpy(whole, chilled, law), law));
    warm(row, heat, law);
    return row;
  });
  return {
    bar: longer(bar, prepared, course, mesh, temperatures, {
      strain: onImages(whole, strain),
      ...(squares ? { squares: carriedSquares(drawnOn(solution.mesh, squares), solution) } : {}),
    }),
    corrections,
    gained: gainedBy(
      bar,
      prepared.entry.length,
      visits,
      visits.map(() => work),
    ),
  };
}

/** J per kg that the bar keeps of the rolls' work: all that deforms it, and half of the friction on its skin. */
function workOf({ energy, sections: [first] }: FlowSolution, density: number) {
  const massFlow = density * first.area * first.speed;
  return { deformation: energy.plastic / massFlow, friction: energy.friction / 2 / massFlow };
}

/** A nodal pattern of heat as J/kg with the wanted mean; even where there is no pattern. */
function spread(pattern: Field, areas: Field, wanted: number): Float64Array {
  let [sum, area] = [0, 0];
  for (let i = 0; i < areas.length; i++) {
    sum += areas[i] * pattern[i];
    area += areas[i];
  }
  const mean = sum / area;
  return Float64Array.from(pattern, (each) => (mean > 0 ? (each * wanted) / mean : wanted));
}
