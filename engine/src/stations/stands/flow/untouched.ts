import { placeNames } from '../../../bar/bar.ts';
import { balanceOf } from '../../../bar/heat-content.ts';
import { ok, type Result } from '../../../outcome/result.ts';
import type { Course } from '../course.ts';
import type { Happened } from '../happened.ts';
import { gainedBy, longer } from '../leaving.ts';
import { arriving, loadRule, loadsAt, type VisitOfPlace } from '../visits.ts';
import type { Ahead } from './ahead.ts';

/** A bar that no roll reaches: it waits and passes as it is, with section, mesh and strain. */
export function untouched(ahead: Ahead): Result<Happened> {
  const { bar, settings, stand, prepared, handbook, law } = ahead;
  const { entry } = prepared;
  const { girth } = handbook;
  const course: Course = {
    ...handbook,
    ...{ outline: entry.outline, elongation: 1, mismatch: 0 },
    girth: { before: girth.before, after: girth.before },
  };
  const visits = passingBy(ahead, course);
  if (!visits.ok) return visits;
  const temperatures = visits.value.map(({ chilled }) => Float64Array.from(chilled));
  const leaving = longer(bar, prepared, course, entry.mesh, temperatures, { ...bar, ...entry });
  const gained = gainedBy(bar, entry.length, visits.value, []);
  const balance = balanceOf(bar, leaving, {}, gained, law);
  const corrections = [0];
  return ok({
    ...{ bar, leaving, settings, stand, prepared, course, visits: visits.value, corrections, balance },
  });
}

function passingBy({ bar, stand, prepared, section, water }: Ahead, course: Course): Result<VisitOfPlace[]> {
  const rule = loadRule(bar, stand, prepared, course);
  const visits: VisitOfPlace[] = [];
  for (const name of placeNames) {
    const arrived = arriving(bar, name, course.timing, section, water);
    if (!arrived.ok) return arrived;
    const { temperature: biting, gained } = arrived.value;
    const loads = loadsAt(biting, prepared, course, section, rule);
    visits.push({ ...{ name, biting, chilled: biting, loads, handbook: loads, gained } });
  }
  return ok(visits);
}
