import { factor, solve } from '../../numerics/ldlt.ts';
import { type Contacts, contactsFor } from './contact.ts';
import { geometryFor, measureElements } from './element-geometry.ts';
import { type Grid, gridOf, skinShare } from './grid.ts';
import { loopArea, type QuadMesh } from './quad-mesh.ts';
import { sliceRoom, solveSlice } from './slice.ts';
import type { SliceTask } from './slice-problem.ts';
import { elementRoom, potential, type Viscous, viscousFor, viscousTangent } from './viscous.ts';

/** A block whose top comes down at 1 m/s: strength in Pa at 1 1/s, and its exponent. */
function softBlock(mesh: QuadMesh, strength: number, exponent: number): { grid: Grid; flow: Viscous } {
  const grid = gridOf(mesh);
  const geometry = geometryFor(grid);
  measureElements(grid, mesh.xy, geometry);
  const flow = viscousFor(grid, geometry);
  flow.strength.fill(strength);
  flow.ownStrength.fill(strength);
  flow.exponent.fill(exponent);
  return { grid, flow };
}

const heightOf = ({ xy }: QuadMesh): number => {
  let height = 0;
  for (let i = 1; i < xy.length; i += 2) height = Math.max(height, xy[i]);
  return height;
};

export interface Pressed {
  /** Rates along the bar and sideways over the rate of height: both 0.5 where nothing holds. */
  readonly along: number;
  readonly spread: number;
  /** Mean pressure on the top, Pa. */
  readonly pressure: number;
  readonly velocity: Float64Array;
}

/** One slice between plates under a pull along the bar of `pull` Pa, solved as every slice of a pass is. */
export function pressed(
  mesh: QuadMesh,
  { exponent, pull = 0, friction = 0 }: { exponent: number; pull?: number; friction?: number },
): Pressed {
  const { grid, flow } = softBlock(mesh, 1, exponent);
  const height = heightOf(mesh);
  const area = loopArea(mesh.loop, mesh.xy);
  const task = taskOf(grid, flow, height, friction);
  task.pull = pull * area;
  const state = { velocity: new Float64Array(2 * grid.nodes), along: 0.1 / height };
  for (let i = 1; i < state.velocity.length; i += 2) state.velocity[i] = -mesh.xy[i] / height;
  const outcome = solveSlice(task, state, sliceRoom(grid), () => {});
  if (!outcome.settled) throw new Error(`the block did not settle: ${outcome.residual}`);
  const { count, pressure } = task.contacts;
  const force = pressure.subarray(0, count).reduce((sum, each) => sum + each, 0);
  const width = area / height;
  return {
    along: state.along * height,
    spread: sideways(mesh, state.velocity) * (height / width),
    pressure: force / width,
    velocity: state.velocity,
  };
}

function taskOf(grid: Grid, flow: Viscous, height: number, friction: number): SliceTask {
  const viscosity = height / 3;
  flow.bulk = 1e6 * viscosity;
  flow.floor = (0.005 / height) ** 2;
  return {
    ...{ flow, contacts: pressingTop(grid, height), turning: new Float64Array([1]) },
    ...{ friction: [friction], shearLimit: [1], pull: 0, speed: 1 },
    ...{ stiffness: 1e7 * viscosity, fade: 1e-3, drag: 1e-9 * viscosity },
    ...{ coupling: new Float64Array(grid.nodes), target: new Float64Array(2 * grid.nodes) },
    ...{ isCold: true, tolerance: 1, keepsContacts: false },
  };
}

/** Mean velocity of the free side. */
function sideways({ xy }: QuadMesh, velocity: Float64Array): number {
  let right = 0;
  for (let i = 0; i < xy.length; i += 2) right = Math.max(right, xy[i]);
  const side = Array.from({ length: xy.length / 2 }, (_, node) => node).filter(
    (node) => xy[2 * node] > right * (1 - 1e-9),
  );
  return side.reduce((sum, node) => sum + velocity[2 * node], 0) / side.length;
}

/** Every node on the top touches a plate that comes down at 1 m/s. */
function pressingTop(grid: Grid, height: number): Contacts {
  const contacts = contactsFor(grid, 1);
  const { xy } = grid.mesh;
  grid.skin.node.forEach((node, s) => {
    if (xy[2 * node + 1] < height * (1 - 1e-9)) return;
    const c = contacts.count++;
    contacts.place[c] = 2 * s;
    contacts.skin[c] = s;
    contacts.node[c] = node;
    contacts.nx[c] = 0;
    contacts.ny[c] = 1;
    contacts.limit[c] = -1;
    // The plate goes along with the bar and comes down: what slips does so sideways.
    contacts.speed[c] = 1;
    contacts.along[c] = 1;
    contacts.acrossY[c] = -1;
    contacts.share[c] = skinShare(grid.skin, s, xy);
    contacts.active[c] = 1;
  });
  return contacts;
}

/**
 * Mean pressure over 2k on a block that sticks to the plates, in plane strain, of a quarter mesh: from the power it
 * takes. The flow stress hardly depends on the rate; the iteration comes to it from a viscous block by and by.
 */
export function stuckPressure(
  mesh: QuadMesh,
  exponents: readonly number[] = [0.3, 0.1, 0.03, 0.01, 0.003],
): number {
  const height = heightOf(mesh);
  const { grid, flow } = softBlock(mesh, 1, exponents[0]);
  const held = heldByPlate(grid, height);
  const velocity = new Float64Array(2 * grid.nodes);
  for (let i = 1; i < velocity.length; i += 2) velocity[i] = mesh.xy[i] > height * (1 - 1e-9) ? -1 : 0;
  for (let i = 0; i < velocity.length; i += 2) {
    if (mesh.xy[i + 1] > height * (1 - 1e-9)) continue;
    velocity[i] = mesh.xy[i] / height;
    velocity[i + 1] = -mesh.xy[i + 1] / height;
  }
  flow.bulk = 1e4 * (height / 3);
  flow.floor = (1e-3 / height) ** 2;
  for (const exponent of exponents) {
    flow.exponent.fill(exponent);
    // The nominal rate 2/√3 · 1/h has the strength 1 whatever the exponent.
    flow.strength.fill((2 / Math.sqrt(3) / height) ** -exponent);
    settle(flow, velocity, held);
  }
  const width = loopArea(mesh.loop, mesh.xy) / height;
  return powerOf(flow, velocity) / width / (2 / Math.sqrt(3));
}

function heldByPlate({ mesh: { xy }, held }: Grid, height: number): Uint8Array {
  const isHeld = new Uint8Array(xy.length);
  for (const i of held) isHeld[i] = 1;
  for (let i = 0; i < xy.length; i += 2) {
    if (xy[i + 1] > height * (1 - 1e-9)) isHeld.fill(1, i, i + 2);
  }
  return isHeld;
}

/** Newton's method at no elongation, unknowns that are held left as they are. */
function settle(flow: Viscous, velocity: Float64Array, held: Uint8Array): void {
  const { grid } = flow;
  const { tangent, element } = sliceRoom(grid);
  const { columnStart, row } = grid.flow.pattern;
  flow.softening = 0.9;
  for (let iteration = 0; iteration < 200; iteration++) {
    viscousTangent(flow, velocity, 0, tangent, element);
    for (let column = 0; column < held.length; column++) {
      if (held[column]) tangent.slope[column] = 0;
      for (let at = columnStart[column] + 1; at < columnStart[column + 1]; at++)
        if (held[column] || held[row[at]]) tangent.matrix[at] = 0;
    }
    const factored = factor(grid.flow.symbolic, tangent.matrix);
    if (!factored.ok) throw new Error(factored.failure.reason);
    const step = solve(
      factored.value,
      tangent.slope.map((each) => -each),
    );
    if (moved(flow, velocity, step) < 1e-5) return;
  }
  throw new Error('the stuck block did not settle');
}

/** Takes as much of the step as lowers the potential; returns its size over that of the velocities. */
function moved(flow: Viscous, velocity: Float64Array, step: Float64Array): number {
  const room = elementRoom();
  const before = potential(flow, velocity, 0, room);
  let share = 1;
  let trial = velocity.map((each, i) => each + step[i]);
  while (share > 1e-3 && potential(flow, trial, 0, room) > before * (1 + 1e-12)) {
    share /= 2;
    trial = velocity.map((each, i) => each + share * step[i]);
  }
  velocity.set(trial);
  return Math.hypot(...step) / Math.hypot(...velocity);
}

/** Σ A ε̇, W per metre: what steel of strength 1 at every rate takes in this flow, an upper bound of what it needs. */
function powerOf(flow: Viscous, velocity: Float64Array): number {
  potential(flow, velocity, 0, elementRoom());
  const { geometry, rateSquared, floor } = flow;
  return rateSquared.reduce(
    (sum, square, k) => sum + geometry.area[k] * Math.sqrt(Math.max(0, square - floor)),
    0,
  );
}
