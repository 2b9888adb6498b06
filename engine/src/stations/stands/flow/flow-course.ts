import { outlineOf } from '../../../phenomena/metal-flow/meshing/whole.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import { sectionProperties } from '../../../section/properties.ts';
import type { Course } from '../course.ts';
import { timingOf } from '../timing.ts';
import type { Ahead } from './ahead.ts';

/** How the bar runs by metal flow: section, elongation and speeds that came out, in place of the handbook's. */
export function flowCourse(
  { bar, settings, stand, prepared, handbook }: Ahead,
  solution: FlowSolution,
): Course {
  const { mesh, sections, exitSpeed, forwardSlip } = solution;
  const { entry } = prepared;
  const outline = outlineOf(mesh, sections[sections.length - 1].xy);
  const { area, perimeter } = sectionProperties(outline);
  const elongation = entry.area / area;
  const length = entry.length * elongation;
  const timing = timingOf(bar, { ...settings, drive: stand.drive, rollingTime: length / exitSpeed });
  return {
    ...handbook,
    outline,
    elongation,
    girth: { before: handbook.girth.before, after: perimeter },
    timing,
    speed: length / timing.rollingTime / (1 + forwardSlip),
  };
}
