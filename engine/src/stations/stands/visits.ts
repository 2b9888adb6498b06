import { type Bar, type PlaceName, placeNames } from '../../bar/bar.ts';
import type { Field } from '../../outcome/field.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { type Heated, rolledOver, type Section, summed, type Water, waited, waterOn } from './approach.ts';
import type { Course } from './course.ts';
import type { Stand } from './equipment.ts';
import { elementTemperatures, touchedEdges } from './heat.ts';
import { type LoadRule, type Loads, loadsOf } from './loads.ts';
import type { Prepared } from './prepare.ts';
import type { PassSettings } from './settings.ts';
import type { Timing } from './timing.ts';

/** What one place of the bar went through, up to where it leaves the bite. */
export interface VisitOfPlace {
  readonly name: PlaceName;
  /** °C at each node of the entering section, before and after the rolls touched it. */
  readonly biting: Field;
  readonly chilled: Field;
  readonly loads: Loads;
  /** The same by the handbook, whatever computes the pass. */
  readonly handbook: Loads;
  /** J per metre of the entering bar, by name. */
  readonly gained: Readonly<Record<string, number>>;
}

/** Head, middle and tail arrive and are bitten, each at its own time. */
export function visitsOf(
  bar: Bar,
  settings: PassSettings,
  stand: Stand,
  prepared: Prepared,
  course: Course,
  section: Section,
): Result<VisitOfPlace[]> {
  const water = waterOn(stand, settings.water, course.speed / course.elongation);
  const rule = loadRule(bar, stand, prepared, course);
  const touched = touchedIn(prepared, course, section);
  const contact = contactIn(stand, course);
  const visits: VisitOfPlace[] = [];
  for (const name of placeNames) {
    const arrived = arriving(bar, name, course.timing, section, water);
    if (!arrived.ok) return arrived;
    const biting = arrived.value.temperature;
    const bitten = rolledOver(section, biting, touched, contact);
    if (!bitten.ok) return bitten;
    const loads = loadsAt(biting, prepared, course, section, rule);
    visits.push({
      name,
      biting,
      chilled: bitten.value.temperature,
      loads,
      handbook: loads,
      gained: summed(arrived.value.gained, bitten.value.gained),
    });
  }
  return ok(visits);
}

/** One place of the bar as it comes to the rolls. */
export function arriving(
  bar: Bar,
  name: PlaceName,
  { bite }: Timing,
  section: Section,
  water: Water | undefined,
): Result<Heated> {
  const { clock, temperature } = bar[name];
  return waited(section, temperature, bite[name] - clock, water);
}

export function loadRule(
  bar: Bar,
  { model, friction }: Stand,
  { flowStress, workingRadius }: Prepared,
  { speed }: Course,
): LoadRule {
  return {
    flowStress,
    composition: bar.grade.composition,
    forceLaw: model.forceLaw,
    force: model.force,
    torque: model.torque,
    friction,
    speed,
    workingRadius,
  };
}

/** The skin in the bite is as large as halfway between entering and leaving. */
function touchedIn({ entry, rolled, rolls }: Prepared, { elongation, girth }: Course, section: Section) {
  const growth = (1 + (elongation * girth.after) / girth.before) / 2;
  return touchedEdges(section.conductor.skin, entry.mesh, rolled, rolls.footFace !== undefined, growth);
}

const contactIn = (stand: Stand, { elongation, bites, speed }: Course) => ({
  conductance: stand.contactCoefficient,
  rollTemperature: stand.rollTemperature,
  duration: elongation > 1 + 1e-9 ? bites.length / speed : 0,
});

export function loadsAt(
  temperature: Field,
  { entry }: Prepared,
  { elements }: Course,
  { conductor }: Section,
  rule: LoadRule,
): Loads {
  return loadsOf(elements, elementTemperatures(entry.mesh, conductor.areas, temperature, elements), rule);
}
