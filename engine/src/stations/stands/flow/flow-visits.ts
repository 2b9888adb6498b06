import { placeNames } from '../../../bar/bar.ts';
import { ok, type Result } from '../../../outcome/result.ts';
import { conductor } from '../../../phenomena/conduction/conductor.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import { type Heated, rolledOver, type Section, summed } from '../approach.ts';
import type { Course } from '../course.ts';
import { arriving, loadRule, loadsAt, type VisitOfPlace } from '../visits.ts';
import type { Ahead } from './ahead.ts';
import { contactTimes, touchedShares } from './contact-time.ts';
import { onWhole } from './entering-mesh.ts';
import { flowLoads } from './flow-loads.ts';

/** What arrives at one place, before it is bitten. */
type Arrival = Pick<VisitOfPlace, 'name' | 'biting' | 'gained' | 'handbook'>;

/**
 * Head, middle and tail arrive and are bitten, each at its own time; `chilled` stands on the mesh of the flow. Every
 * place touches the rolls where the middle of the bar does, and as long.
 */
export function flowVisits(ahead: Ahead, course: Course, solution: FlowSolution): Result<VisitOfPlace[]> {
  const arrivals = arrivalsOf(ahead, course);
  if (!arrivals.ok) return arrivals;
  const chilled = chilledBy(ahead, course, solution, arrivals.value);
  if (!chilled.ok) return chilled;
  const middle = arrivals.value[1].handbook;
  return ok(
    arrivals.value.map((arrival, i) => ({
      ...arrival,
      chilled: chilled.value[i].temperature,
      gained: summed(arrival.gained, chilled.value[i].gained),
      loads: flowLoads(solution, arrival.handbook, middle),
    })),
  );
}

function arrivalsOf(ahead: Ahead, { timing }: Course): Result<Arrival[]> {
  const { bar, stand, prepared, handbook, section, water } = ahead;
  const rule = loadRule(bar, stand, prepared, handbook);
  const arrivals: Arrival[] = [];
  for (const name of placeNames) {
    const arrived = arriving(bar, name, timing, section, water);
    if (!arrived.ok) return arrived;
    const { temperature: biting, gained } = arrived.value;
    arrivals.push({ name, biting, gained, handbook: loadsAt(biting, prepared, handbook, section, rule) });
  }
  return ok(arrivals);
}

function chilledBy(
  { stand, prepared, section, entering, law }: Ahead,
  { elongation, girth }: Course,
  solution: FlowSolution,
  arrivals: readonly Arrival[],
): Result<Heated[]> {
  const { contactCoefficient: conductance, rollTemperature } = stand;
  const growth = (1 + (elongation * girth.after) / girth.before) / 2;
  const { touched, duration } = touchedShares(entering.whole, contactTimes(solution), conductance, growth);
  const fields = arrivals.map(({ biting }) => biting);
  const inBite: Section = { ...section, conductor: conductor(entering.whole) };
  const rows: Heated[] = [];
  for (const temperature of onWhole(prepared, entering, fields, law).temperatures) {
    const bitten = rolledOver(inBite, temperature, touched, { conductance, rollTemperature, duration });
    if (!bitten.ok) return bitten;
    rows.push(bitten.value);
  }
  return ok(rows);
}
