import { factor, solve } from '../../numerics/ldlt.ts';
import type { PhaseChange } from './heat-problem.ts';
import type { March, Moments } from './march.ts';

/** A step that settled, or the largest change of temperature, K, that its last iteration still made. */
export type Step = { readonly settled: true } | { readonly settled: false; readonly change: number };

const largestChange = 60;
const mostIterations = 14;

/**
 * One implicit step to `time` + dt: second-order backward differences on heat content, w = dt / last dt; w = 0 is backward
 * Euler. Newton seeks the temperatures; content and ψ are then advanced by the flows at those temperatures,
 * so that every joule is in the ledger and what iteration leaves open is mended by the next step. The search starts
 * `ahead` times the last change from now.
 */
export function implicitStep(run: March, time: number, dt: number, w: number, ahead = w): Step {
  const [a0, a1, a2] = [(1 + 2 * w) / (1 + w), 1 + w, (w * w) / (1 + w)];
  const { temperature, rhs } = run;
  predict(temperature, ahead);
  let change = Number.POSITIVE_INFINITY;
  for (let iteration = 0; iteration < mostIterations; iteration++) {
    run.iterations++;
    const afresh = iteration !== 1;
    if (afresh) assembleConductance(run);
    assembleFlow(run, time + dt);
    fillResidual(run, dt, a0, a1, a2, afresh);
    if (afresh && !refactored(run)) return { settled: false, change };
    if (!run.factor) return { settled: false, change };
    solve(run.factor, rhs, rhs);
    change = improve(temperature.new, rhs);
    if (!(change < Number.POSITIVE_INFINITY)) return { settled: false, change };
    if (change > run.settledBelow) continue;
    assembleFlow(run, time + dt);
    advance(run, dt, a0, a1, a2);
    return { settled: true };
  }
  return { settled: false, change };
}

function predict({ old, now, new: next }: Moments, w: number): void {
  for (let i = 0; i < now.length; i++) next[i] = now[i] + w * (now[i] - old[i]);
}

/** Conduction between neighbours, at the conductivity of each triangle's mean temperature. */
function assembleConductance(run: March): void {
  const { conductor, conductance, temperature, share, problem } = run;
  const { mesh, pairSlot, pairShape } = conductor;
  const T = temperature.new;
  const product = problem.change?.product;
  conductance.fill(0);
  for (let at = 0; at < pairSlot.length; at += 3) {
    const [a, b, c] = [mesh.triangles[at], mesh.triangles[at + 1], mesh.triangles[at + 2]];
    const mean = (T[a] + T[b] + T[c]) / 3;
    let k = problem.law.conductivity(mean);
    if (product) {
      const changed = (share.now[a] + share.now[b] + share.now[c]) / 3;
      if (changed > 0) k += changed * (product.conductivity(mean) - k);
    }
    conductance[pairSlot[at]] += k * pairShape[at];
    conductance[pairSlot[at + 1]] += k * pairShape[at + 1];
    conductance[pairSlot[at + 2]] += k * pairShape[at + 2];
  }
}

/** Flow into each node: from its neighbours and through the surface. */
function assembleFlow(run: March, time: number): void {
  const { conductor, conductance, flow, flowSlope, temperature, surface, slope, flux, problem } = run;
  const { columnStart, row } = conductor.symbolic.pattern;
  const { node, length } = conductor.skin;
  const T = temperature.new;
  flow.fill(0);
  flowSlope.fill(0);
  for (let j = 0; j < T.length; j++) {
    for (let at = columnStart[j] + 1; at < columnStart[j + 1]; at++) {
      const i = row[at];
      const passed = conductance[at] * (T[i] - T[j]);
      flow[i] += passed;
      flow[j] -= passed;
    }
  }
  slope.fill(0);
  for (let end = 0; end < surface.length; end++) surface[end] = T[node[end]];
  for (let c = 0; c < flux.length; c++) {
    problem.surface[c].heat(surface, time, flux[c], slope);
    for (let end = 0; end < surface.length; end++) flow[node[end]] += (flux[c][end] * length[end >> 1]) / 2;
  }
  for (let end = 0; end < surface.length; end++) flowSlope[node[end]] += (slope[end] * length[end >> 1]) / 2;
}

/** Heat that the step would have to bring beyond what flows, and with `afresh` the matrix of its change. */
function fillResidual(run: March, dt: number, a0: number, a1: number, a2: number, afresh: boolean): void {
  const {
    problem,
    conductor,
    mass,
    content,
    psi,
    share,
    temperature,
    matrix,
    conductance,
    flow,
    flowSlope,
    rhs,
  } = run;
  const { law, change } = problem;
  const { columnStart, row } = conductor.symbolic.pattern;
  if (afresh) for (let at = 0; at < matrix.length; at++) matrix[at] = dt * conductance[at];
  const diagonal = flowSlope; // reused: the slope is used up here
  for (let i = 0; i < rhs.length; i++) {
    const T = temperature.new[i];
    let enthalpy = law.enthalpy(T);
    let capacity = afresh ? law.heatCapacity(T) : 0;
    if (change) {
      const middle = (temperature.now[i] + T) / 2;
      const grown = psi.now[i] + growth(change.kinetics, temperature.now[i], T, dt);
      const X = change.kinetics.share(grown);
      share.new[i] = X;
      const released = change.product.enthalpy(T) - enthalpy;
      enthalpy += X * released;
      if (afresh) {
        capacity += X * (change.product.heatCapacity(T) - capacity);
        const growthPerK = (dt / 6) * (2 * change.kinetics.rateSlope(middle) + change.kinetics.rateSlope(T));
        const perK = change.kinetics.shareSlope(grown) * growthPerK;
        capacity += Math.max(released * perK, -0.5 * capacity);
      }
    }
    rhs[i] = a1 * content.now[i] - a2 * content.old[i] + dt * flow[i] - a0 * mass[i] * enthalpy;
    diagonal[i] = a0 * mass[i] * capacity - dt * flowSlope[i];
  }
  if (!afresh) return;
  for (let j = 0; j < rhs.length; j++) {
    let own = diagonal[j];
    for (let at = columnStart[j] + 1; at < columnStart[j + 1]; at++) {
      own -= matrix[at];
      diagonal[row[at]] -= matrix[at];
    }
    matrix[columnStart[j]] = own;
  }
}

/** Growth of ψ over a step in which the temperature goes straight, by Simpson's rule: steps can be long at no loss. */
const growth = ({ rate }: PhaseChange['kinetics'], from: number, to: number, dt: number): number =>
  (dt / 6) * (rate(from) + 4 * rate((from + to) / 2) + rate(to));

function refactored(run: March): boolean {
  const made = factor(run.conductor.symbolic, run.matrix, run.factor ? { into: run.factor } : {});
  if (made.ok) run.factor = made.value;
  return made.ok;
}

/** Adds the change, at most 60 K at a node, and returns the largest. */
function improve(T: Float64Array, change: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < T.length; i++) {
    const each = Math.min(largestChange, Math.max(-largestChange, change[i]));
    if (!(Math.abs(each) <= largest)) largest = Math.abs(each);
    T[i] += each;
  }
  return largest;
}

/** Content, ψ, share and ledger at the end of the step, by the same differences as the step itself. */
function advance(run: March, dt: number, a0: number, a1: number, a2: number): void {
  const { content, psi, share, gained, temperature, flow, flux, conductor, problem } = run;
  const { change } = problem;
  const { length } = conductor.skin;
  for (let i = 0; i < flow.length; i++) {
    content.new[i] = (a1 * content.now[i] - a2 * content.old[i] + dt * flow[i]) / a0;
    if (!change) continue;
    psi.new[i] = psi.now[i] + growth(change.kinetics, temperature.now[i], temperature.new[i], dt);
    share.new[i] = change.kinetics.share(psi.new[i]);
  }
  for (let c = 0; c < flux.length; c++) {
    let power = 0;
    for (let end = 0; end < flux[c].length; end++) power += (flux[c][end] * length[end >> 1]) / 2;
    gained.new[c] = (a1 * gained.now[c] - a2 * gained.old[c] + dt * power) / a0;
  }
}
