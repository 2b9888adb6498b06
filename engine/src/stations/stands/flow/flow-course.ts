import { outlineOf } from '../../../phenomena/metal-flow/meshing/whole.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import { sectionProperties } from '../../../section/properties.ts';
import type { Course } from '../course.ts';
import { mismatchOf } from '../elements.ts';
import { timingOf } from '../timing.ts';
import type { Ahead } from './ahead.ts';
import { elementAreas } from './flow-elements.ts';

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
  const leavingSpeed = length / timing.rollingTime;
  return {
    ...handbook,
    outline,
    elongation,
    girth: { before: handbook.girth.before, after: perimeter },
    timing,
    speed: leavingSpeed / (1 + forwardSlip),
    rollSpeed: (settings.speed * leavingSpeed) / exitSpeed,
    mismatch: mismatchOf(elementAreas(prepared, outline, handbook.elements)),
  };
}
