import type { Field } from '../../outcome/field.ts';
import { deflectionAt, pressForces, type RollerLine } from './rollers.ts';

/** Misses smaller than this are contact, m. */
const gapTolerance = 1e-8;

/**
 * The next set of touching rollers, or undefined when this one is right: every touching roller presses and the bar runs
 * clear of all others. One change at a time: the roller that would pull hardest is let go, else the one that the bar
 * would run into deepest is taken back. `forceTolerance` in N.
 */
export function nextContact(
  curvature: Field,
  line: RollerLine,
  touching: readonly number[],
  moment: Field,
  forceTolerance: number,
): readonly number[] | undefined {
  const press = pressForces(line, moment);
  const weakest = touching.reduce((a, b) => (press[b] < press[a] ? b : a));
  if (press[weakest] < -forceTolerance && touching.length > 3)
    return touching.filter((each) => each !== weakest);
  let [deepest, depth] = [-1, gapTolerance];
  for (let roller = 0; roller < line.position.length; roller++) {
    if (touching.includes(roller)) continue;
    const into = overlap(curvature, line, touching, roller);
    if (into > depth) [deepest, depth] = [roller, into];
  }
  return deepest < 0 ? undefined : [...touching, deepest].sort((a, b) => a - b);
}

/** How deep the bar would stand in a roller that is taken as not touching, m; negative when it runs clear. */
export function overlap(
  curvature: Field,
  line: RollerLine,
  touching: readonly number[],
  roller: number,
): number {
  const beyond = line.offset[roller] - deflectionAt(curvature, line, touching, roller);
  return roller % 2 ? beyond : -beyond;
}
