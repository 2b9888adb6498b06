import { type Factor, factor, solve } from '../../numerics/ldlt.ts';
import { addFriction, addPressure, changeContacts, frictionPotential, pressureOf } from './contact-forces.ts';
import type { Grid } from './grid.ts';
import type { SliceOutcome, SliceState, SliceTask } from './slice-problem.ts';
import { type ElementRoom, elementRoom, potential, type Tangent, viscousTangent } from './viscous.ts';

/** Storage that all slices of a pass use one after the other. */
export interface SliceRoom {
  readonly tangent: Tangent;
  readonly element: ElementRoom;
  readonly rightSides: Float64Array<ArrayBuffer>;
  readonly trial: Float64Array;
  factored: Factor | undefined;
}

export const sliceRoom = (grid: Grid): SliceRoom => ({
  tangent: {
    matrix: new Float64Array(grid.flow.pattern.row.length),
    slope: new Float64Array(2 * grid.nodes),
    mixed: new Float64Array(2 * grid.nodes),
    slopeAlong: 0,
    curvatureAlong: 0,
    value: 0,
  },
  element: elementRoom(),
  rightSides: new Float64Array(4 * grid.nodes),
  trial: new Float64Array(2 * grid.nodes),
  factored: undefined,
});

const mostIterations = 30;

/** Changes of the velocities and of friction, relative, below which a slice is solved. */
const [settledStep, settledFriction] = [3e-3, 1e-2];

/** Just under Newton's method: one step of the full tangent too many costs more than it wins. */
const nearNewton = 0.98;

/** A slice that starts from a guess first settles its viscosities. */
const coldSteps = ({ isCold }: SliceTask): number => (isCold ? 4 : 0);

/**
 * Newton's method with contact and friction renewed after every step. What does not settle from where it starts is
 * tried once more from `afresh`, with viscosities settled first.
 */
export function solveSlice(
  task: SliceTask,
  state: SliceState,
  room: SliceRoom,
  afresh: () => void,
): SliceOutcome {
  const first = iterated(task, state, room);
  if (first.settled) return first;
  afresh();
  task.isCold = true;
  return iterated(task, state, room);
}

function iterated(task: SliceTask, state: SliceState, room: SliceRoom): SliceOutcome {
  let residual = 1;
  for (let iteration = 1; iteration <= mostIterations; iteration++) {
    task.flow.softening = iteration > coldSteps(task) ? nearNewton : 0;
    const step = newtonStep(task, state, room);
    if (step === undefined) return { settled: false, residual };
    residual = step.change;
    const changed = changeContacts(task, state.velocity, iteration);
    const { tolerance } = task;
    if (step.full && residual < settledStep * tolerance && changed < settledFriction * tolerance)
      return { settled: true, residual };
  }
  return { settled: false, residual };
}

/** One step: its size relative to the velocities, and whether it was taken whole. Nothing when the matrix is singular. */
function newtonStep(
  task: SliceTask,
  state: SliceState,
  room: SliceRoom,
): { readonly change: number; readonly full: boolean } | undefined {
  assemble(task, state, room);
  const { grid } = task.flow;
  const { tangent, rightSides } = room;
  const n = 2 * grid.nodes;
  for (let i = 0; i < n; i++) {
    rightSides[i] = -tangent.slope[i];
    rightSides[n + i] = tangent.mixed[i];
  }
  const factored = factor(grid.flow.symbolic, tangent.matrix, room.factored ? { into: room.factored } : {});
  if (!factored.ok) return undefined;
  room.factored = factored.value;
  solve(factored.value, rightSides, rightSides);
  let [slope, curvature] = [tangent.slopeAlong, tangent.curvatureAlong];
  for (let i = 0; i < n; i++) {
    slope += tangent.mixed[i] * rightSides[i];
    curvature -= tangent.mixed[i] * rightSides[n + i];
  }
  const along = -slope / curvature;
  for (let i = 0; i < n; i++) rightSides[i] -= along * rightSides[n + i];
  return lineSearch(task, state, room, along);
}

function assemble(task: SliceTask, state: SliceState, room: SliceRoom): void {
  const { flow, coupling, target, drag } = task;
  const { grid } = flow;
  const { tangent } = room;
  viscousTangent(flow, state.velocity, state.along, tangent, room.element);
  tangent.slopeAlong -= task.pull;
  const { columnStart } = grid.flow.pattern;
  for (let i = 0; i < 2 * grid.nodes; i++) {
    const c = coupling[i >> 1];
    tangent.matrix[columnStart[i]] += c + drag;
    tangent.slope[i] += c * (state.velocity[i] - target[i]) + drag * state.velocity[i];
  }
  addPressure(task, state.velocity, tangent);
  addFriction(task, state.velocity, tangent);
  holdSymmetry(grid, tangent);
}

function holdSymmetry(grid: Grid, tangent: Tangent): void {
  for (const entry of grid.heldEntries) tangent.matrix[entry] = 0;
  for (const i of grid.held) {
    tangent.slope[i] = 0;
    tangent.mixed[i] = 0;
  }
}

/** Halves the step until the potential falls, with contact and friction as they are. */
function lineSearch(task: SliceTask, state: SliceState, room: SliceRoom, along: number) {
  const { velocity } = state;
  const { trial, rightSides } = room;
  const before = wholePotential(task, velocity, state.along, room.tangent.value);
  let share = 1;
  for (; share > 1e-3; share /= 2) {
    for (let i = 0; i < velocity.length; i++) trial[i] = velocity[i] + share * rightSides[i];
    const e = state.along + share * along;
    const after = wholePotential(task, trial, e, potential(task.flow, trial, e, room.element));
    if (after <= before + 1e-9 * Math.abs(before)) break;
  }
  let [moved, size] = [0, 1e-30];
  for (let i = 0; i < velocity.length; i++) {
    moved += (trial[i] - velocity[i]) ** 2;
    size += trial[i] ** 2;
    velocity[i] = trial[i];
  }
  state.along += share * along;
  return { change: Math.sqrt(moved / size) / Math.min(1, share), full: share === 1 };
}

/** The viscous potential and what neighbours, rolls and the pull in the bar add to it. */
function wholePotential(task: SliceTask, v: Float64Array, along: number, viscous: number): number {
  const { coupling, target, drag, contacts, pull, stiffness } = task;
  let sum = viscous - pull * along;
  for (let i = 0; i < v.length; i++) {
    const off = v[i] - target[i];
    sum += (coupling[i >> 1] * off * off + drag * v[i] * v[i]) / 2;
  }
  for (let c = 0; c < contacts.count; c++) {
    if (contacts.active[c]) sum += (stiffness * pressureOf(contacts, v, c) ** 2) / 2;
  }
  return sum + frictionPotential(task, v);
}
