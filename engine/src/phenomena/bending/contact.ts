import type { Field } from '../../outcome/field.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { deflectionAt, pressForces, type RollerLine } from './rollers.ts';

/** A bar that passes the rollers named in `touching` (numbers from 0); moment N·m per roller, residual in rad. */
export interface Passing {
  readonly touching: readonly number[];
  readonly moment: Field;
  /** 1/m at the points of each span. */
  readonly curvature: Field;
  readonly residual: number;
  readonly iterations: number;
}

/**
 * What counts as contact just made, so that a roller within both may be told as touching or free:
 * gap in m, and force in N that moves an elastic bar on the two neighbours by that gap.
 */
export interface Closeness {
  readonly gap: number;
  readonly force: number;
}

/** 6 EI/p³ is the stiffness of a beam on two supports 2p apart; `stiffness` EI in N·m². */
export const closeness = (gap: number, stiffness: number, { position }: RollerLine): Closeness => ({
  gap,
  force: ((6 * stiffness) / (position[1] - position[0]) ** 3) * gap,
});

/**
 * Solves with a set of touching rollers, changes one roller and solves again until every touching roller presses and
 * the bar runs clear of all others. The worst offender goes first; once a set comes again, the first one along the bar,
 * a rule that cannot cycle on an elastic bar (least index, Murty 1974). Fails when a set comes again even so.
 */
export function settledContact<Found extends Passing>(
  line: RollerLine,
  start: Pick<Passing, 'touching' | 'moment'>,
  close: Closeness,
  solve: (touching: readonly number[], moment: Field) => Result<Found>,
): Result<Found> {
  let { touching, moment } = start;
  let iterations = 0;
  let residual = 1;
  for (const choice of [worst, first]) {
    const seen = new Set<string>();
    while (!seen.has(touching.join())) {
      seen.add(touching.join());
      const solved = solve(touching, moment);
      if (!solved.ok) return solved;
      iterations += solved.value.iterations;
      const offender = choice(offenders(line, solved.value, close));
      if (!offender) return ok({ ...solved.value, iterations });
      residual = offender.by * close.gap;
      touching = changed(touching, offender.roller);
      moment = solved.value.moment;
    }
  }
  return fail({
    model: 'straightener',
    reason: 'Contact does not settle: the same rollers let go and touch again.',
    residual,
    iterations,
  });
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

/** A roller that pulls or that the bar stands in, and by how many times what is close enough. */
interface Offender {
  readonly roller: number;
  readonly pulls: boolean;
  readonly by: number;
}

/** All offenders along the bar. Three rollers are needed to bend: the last three do not let go. */
function offenders(
  line: RollerLine,
  { touching, moment, curvature }: Passing,
  close: Closeness,
): readonly Offender[] {
  const press = pressForces(line, moment);
  return Array.from(line.position, (_, roller) => {
    const pulls = touching.includes(roller);
    const force = touching.length > 3 ? -press[roller] / close.force : 0;
    return { roller, pulls, by: pulls ? force : overlap(curvature, line, touching, roller) / close.gap };
  }).filter(({ by }) => by > 1);
}

type Choice = (among: readonly Offender[]) => Offender | undefined;

/** Rollers that pull go before those that the bar stands in. */
const worst: Choice = (among) =>
  [...among].sort((a, b) => Number(b.pulls) - Number(a.pulls) || b.by - a.by)[0];

const first: Choice = (among) => among[0];

const changed = (touching: readonly number[], roller: number): readonly number[] =>
  touching.includes(roller)
    ? touching.filter((each) => each !== roller)
    : [...touching, roller].sort((a, b) => a - b);
