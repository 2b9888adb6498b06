import type { Factor } from '../../numerics/ldlt.ts';
import type { Conductor } from './conductor.ts';
import type { HeatProblem, HeatState } from './heat-problem.ts';

/** Everything one computation writes to. Rows are per node unless said otherwise; heat is J per metre of bar. */
export interface March {
  readonly conductor: Conductor;
  readonly problem: HeatProblem;
  /** kg per metre of bar. */
  readonly mass: Float64Array;
  /** The last three moments of temperature, heat content, ψ and share; `new` is being sought. */
  temperature: Moments;
  content: Moments;
  psi: Moments;
  share: Moments;
  /** Heat taken up so far, one entry per channel. */
  gained: Moments;
  /** J/mK·m, in the places of the matrix; only off-diagonal places are used. */
  readonly conductance: Float64Array;
  readonly matrix: Float64Array;
  /** Flow of heat into each node, W/m, and its slope, W/mK. */
  readonly flow: Float64Array;
  readonly flowSlope: Float64Array;
  readonly rhs: Float64Array<ArrayBuffer>;
  /** One entry per end of a boundary edge. */
  readonly surface: Float64Array;
  readonly slope: Float64Array;
  readonly flux: readonly Float64Array[];
  factor?: Factor;
  /** K; Newton stops when no temperature changes by more. */
  readonly settledBelow: number;
  iterations: number;
}

export interface Moments {
  old: Float64Array;
  now: Float64Array;
  new: Float64Array;
}

/** settledBelow: 0.02 K is fine enough unless the steps are controlled to less than ten times that. */
export function march(
  conductor: Conductor,
  problem: HeatProblem,
  start: HeatState,
  settledBelow = 0.02,
): March {
  const n = conductor.areas.length;
  const ends = 2 * conductor.skin.edges;
  const nodes = () => new Float64Array(n);
  const moments = (now: Float64Array): Moments => ({ old: now.slice(), now, new: now.slice() });
  const psi: Float64Array = start.psi ? Float64Array.from(start.psi) : nodes();
  const shareOf = problem.change?.kinetics.share ?? (() => 0);
  const run: March = {
    conductor,
    problem,
    mass: Float64Array.from(conductor.areas, (area) => (problem.massPerMetre * area) / conductor.area),
    temperature: moments(Float64Array.from(start.temperature)),
    content: moments(nodes()),
    psi: moments(psi),
    share: moments(Float64Array.from(psi, shareOf)),
    gained: moments(new Float64Array(problem.surface.length)),
    conductance: new Float64Array(conductor.symbolic.pattern.row.length),
    matrix: new Float64Array(conductor.symbolic.pattern.row.length),
    flow: nodes(),
    flowSlope: nodes(),
    rhs: nodes(),
    surface: new Float64Array(ends),
    slope: new Float64Array(ends),
    flux: problem.surface.map(() => new Float64Array(ends)),
    settledBelow,
    iterations: 0,
  };
  for (let i = 0; i < n; i++) run.content.now[i] = run.mass[i] * enthalpyAt(run, i);
  return run;
}

/** J/kg at a node, as it is now. */
function enthalpyAt({ problem: { law, change }, temperature, share }: March, i: number): number {
  const T = temperature.now[i];
  const before = law.enthalpy(T);
  return change ? before + share.now[i] * (change.product.enthalpy(T) - before) : before;
}

/** The new moment becomes now. */
export function accept(run: March): void {
  for (const moments of [run.temperature, run.content, run.psi, run.share, run.gained]) {
    const spare = moments.old;
    moments.old = moments.now;
    moments.now = moments.new;
    moments.new = spare;
  }
}

/** Heat content by the temperatures less heat content by the ledger, J per metre of bar. */
export function openHeat(run: March): number {
  let open = 0;
  for (let i = 0; i < run.mass.length; i++) open += run.mass[i] * enthalpyAt(run, i) - run.content.now[i];
  return open;
}
