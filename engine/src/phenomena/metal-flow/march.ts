import type { Field } from '../../outcome/field.ts';
import { type AxialShear, axialShearFor, relief, screeningLength, spreadShear } from './axial-shear.ts';
import { type Bite, type Level, type Slice, skinLength } from './bite.ts';
import {
  type Contacts,
  contactsFor,
  copyContacts,
  findContacts,
  type Outlines,
  outlinesFor,
  recallContacts,
  rememberContacts,
} from './contact.ts';
import { noSlip, renewCaps, slipOf } from './contact-forces.ts';
import { type ElementGeometry, geometryFor, measureElements } from './element-geometry.ts';
import { relaxer } from './meshing/smoothing.ts';
import { loopArea } from './quad-mesh.ts';
import { type SliceRoom, type SliceTask, sliceRoom, solveSlice } from './slice.ts';
import { type Touching, touchingOf } from './touching.ts';
import { viscousFor } from './viscous.ts';

/** Everything that marches through one bite share: storage, filled anew by every slice. */
export interface MarchRoom {
  readonly geometry: ElementGeometry;
  /** Room to look ahead in. */
  readonly probe: ElementGeometry;
  readonly task: SliceTask;
  readonly contacts: Contacts;
  readonly outlines: Outlines;
  readonly slice: SliceRoom;
  readonly shear: AxialShear;
  readonly friction: Float64Array;
  readonly halfway: Float64Array;
  readonly relax: (xy: Float64Array, fields: Float64Array[]) => number;
}

export function marchRoom({ grid, rolls, problem, scales }: Bite): MarchRoom {
  const geometry = geometryFor(grid);
  const contacts = contactsFor(grid, rolls.length);
  const task: SliceTask = {
    flow: viscousFor(grid, geometry),
    contacts,
    turning: new Float64Array(rolls.length),
    friction: Float64Array.from(problem.rolls, ({ friction }) => friction),
    shearLimit: Float64Array.from(problem.rolls, ({ shearLimit = 1 }) => shearLimit),
    pull: 0,
    speed: 0,
    stiffness: 1e5 * scales.viscosity,
    fade: 0.01 * scales.speed,
    drag: 1e-5 * scales.viscosity,
    coupling: new Float64Array(grid.nodes),
    target: new Float64Array(2 * grid.nodes),
    isCold: true,
  };
  task.flow.bulk = 1e4 * scales.viscosity;
  task.flow.floor = (0.005 * scales.rate) ** 2;
  return {
    geometry,
    probe: geometryFor(grid),
    task,
    contacts,
    outlines: outlinesFor(rolls),
    slice: sliceRoom(grid),
    shear: axialShearFor(grid),
    friction: new Float64Array(grid.nodes),
    halfway: new Float64Array(2 * grid.nodes),
    relax: relaxer(grid.mesh),
  };
}

/** How a march takes account of the slice ahead. */
export interface MarchMode {
  /** First march of the coarsest level: nothing is known of the slices ahead. */
  readonly isFirst: boolean;
  /** Share by which velocities ahead are carried on with the change of this slice; 0 to 0.8. */
  readonly extrapolation: number;
}

/** The bar as one march found it. */
export interface March {
  readonly sections: readonly MarchSection[];
  readonly steps: readonly MarchStep[];
  /** Slices whose Newton iteration did not settle. */
  readonly unsettled: number;
  readonly iterations: number;
}

export interface MarchSection {
  readonly xy: Float64Array;
  /** Computed part, m². */
  readonly area: number;
  readonly strain: Float64Array;
  readonly temperature: Float64Array;
}

export interface MarchStep {
  readonly length: number;
  readonly duration: number;
  /** Mean speed along the bar, m/s, and rate along it, 1/s. */
  readonly speed: number;
  readonly along: number;
  readonly velocity: Float64Array;
  readonly rate: Float64Array;
  readonly flowStress: Float64Array;
  readonly shearShare: Float64Array;
  readonly touching: Touching;
  /** Work of deformation, W, per element and in all. */
  readonly power: Float64Array;
  readonly plastic: number;
}

/** Where and why a march could not go on. */
export interface Broken {
  readonly slice: number;
  readonly reason: string;
}

/** Carries the entering section through all slices once. */
export function march(bite: Bite, level: Level, room: MarchRoom, mode: MarchMode): March | Broken {
  const { mesh, strain, temperature } = bite.problem;
  const n = level.slices.length;
  const xy = Float64Array.from(mesh.xy);
  const state = { strain: Float64Array.from(strain), temperature: Float64Array.from(temperature) };
  const upstream = new Float64Array(2 * bite.grid.nodes);
  const [sections, steps]: [MarchSection[], MarchStep[]] = [[], []];
  let [unsettled, iterations] = [0, 0];
  room.task.turning.set(level.turning);
  for (let i = 0; i < n; i++) {
    const area = loopArea(mesh.loop, xy);
    sections.push({
      xy: xy.slice(),
      area,
      strain: state.strain.slice(),
      temperature: state.temperature.slice(),
    });
    const slice = level.slices[i];
    const wasNew = slice.isNew;
    if (slice.isNew) startVelocity(bite, level, i, xy, slice);
    const length = level.distance[i] - level.distance[i + 1];
    const entering = level.flow / area;
    const stretch = Math.max(-0.3 * entering, Math.min(0.3 * entering, (slice.along * length) / 2));
    const speed = entering + stretch;
    const duration = length / speed;
    if (!measureHalfway(bite, xy, slice.velocity, wasNew ? 0 : duration / 2, room)) {
      return broken(i, 'an element turned over');
    }
    prepare(bite, level, i, room, state, upstream, mode, { speed, duration, length }, xy);
    room.task.isCold = wasNew;
    slice.earlier.set(slice.velocity);
    const solved = solveSlice(room.task, slice, room.slice, () => {
      startVelocity(bite, level, i, xy, slice);
      recallContacts(slice.memory, room.contacts);
    });
    iterations += solved.iterations;
    if (!solved.settled) unsettled++;
    if (!Number.isFinite(slice.along)) return broken(i, 'the slice has no solution');
    const step = record(bite, level, i, room, { speed, duration, length }, xy);
    steps.push(step);
    advance(bite, slice, step, room, xy, state, upstream);
  }
  if (!(measureElements(bite.grid, xy, room.geometry) > 0)) return broken(n, 'an element turned over');
  const area = loopArea(mesh.loop, xy);
  sections.push({ xy, area, strain: state.strain, temperature: state.temperature });
  return { sections, steps, unsettled, iterations };
}

/**
 * Integrals over the section halfway through the step, by the velocities of the march before: with them the area
 * changes over the whole step by exactly what the rates say. At the start of the step where halfway an element is turned over.
 */
function measureHalfway(
  { grid }: Bite,
  xy: Field,
  velocity: Field,
  time: number,
  { halfway, geometry }: MarchRoom,
): boolean {
  for (let at = 0; at < halfway.length; at++) halfway[at] = xy[at] + time * velocity[at];
  return measureElements(grid, halfway, geometry) > 0 || measureElements(grid, xy, geometry) > 0;
}

const broken = (slice: number, reason: string): Broken => ({ slice, reason });

export const isBroken = (made: March | Broken): made is Broken => 'reason' in made;

/** A slice never solved starts from the slice before it, the first one from an even squeeze. */
function startVelocity({ scales }: Bite, level: Level, i: number, xy: Field, slice: Slice): void {
  slice.isNew = false;
  if (i > 0) {
    const before = level.slices[i - 1];
    slice.velocity.set(before.velocity);
    slice.along = before.along;
    copyContacts(before.memory, slice.memory);
    return;
  }
  for (let at = 0; at < slice.velocity.length; at += 2) {
    slice.velocity[at] = 0;
    slice.velocity[at + 1] = -scales.rate * xy[at + 1];
  }
  slice.along = scales.rate;
}

interface Motion {
  readonly speed: number;
  readonly duration: number;
  readonly length: number;
}

interface NodeState {
  readonly strain: Float64Array;
  readonly temperature: Float64Array;
}

/** Sets the task of slice i. */
function prepare(
  bite: Bite,
  level: Level,
  i: number,
  room: MarchRoom,
  state: NodeState,
  upstream: Field,
  mode: MarchMode,
  { speed, duration }: Motion,
  xy: Field,
): void {
  const { grid, rolls, problem, length } = bite;
  const { task, contacts, outlines } = room;
  const slice = level.slices[i];
  const { distance } = level;
  strengths(bite, slice.relief, state, task.flow.strength, task.flow.exponent);
  task.flow.before.set(upstream);
  task.flow.shear = (problem.wishes.shear ?? 1) / spacingBefore(distance, i) ** 2;
  task.pull = (level.pull[i] + level.pull[i + 1]) / 2;
  task.speed = speed;
  coupleAhead(bite, level, i, mode, task);
  const step = { from: distance[i], to: distance[i + 1], bite: length, duration };
  findContacts(grid, rolls, outlines, xy, step, slice.memory, contacts);
}

/** Distance between the middles of slice i and the one before it, m; the first one stands a whole slice from rest. */
const spacingBefore = (distance: Field, i: number): number =>
  i === 0 ? distance[0] - distance[1] : (distance[i - 1] - distance[i + 1]) / 2;

function strengths(
  { grid, problem: { steel } }: Bite,
  reliefs: Field,
  { strain, temperature }: NodeState,
  strength: Float64Array,
  exponent: Float64Array,
): void {
  const { quads } = grid;
  for (let k = 0; k < grid.elements; k++) {
    let [own, T] = [0, 0];
    for (let a = 0; a < 4; a++) {
      own += strain[quads[4 * k + a]] / 4;
      T += temperature[quads[4 * k + a]] / 4;
    }
    const m = steel.exponent(T);
    exponent[k] = m;
    strength[k] = reliefs[k] * steel.strength(own, T) * steel.referenceRate ** -m;
  }
}

/** The pull of slice i + 1, as it was in the march before, on slice i. */
function coupleAhead(
  { problem }: Bite,
  { slices, distance }: Level,
  i: number,
  { isFirst, extrapolation }: MarchMode,
  { coupling, target }: SliceTask,
): void {
  const chi = problem.wishes.shear ?? 1;
  const own = distance[i] - distance[i + 1];
  const isLast = i + 1 === slices.length;
  const spacing = isLast ? own : (distance[i] - distance[i + 2]) / 2;
  const ahead = isLast ? own : distance[i + 1] - distance[i + 2];
  const weight = (chi * ahead) / (6 * spacing * spacing * own);
  const hold = isFirst ? slices[Math.max(0, i - 1)].hold : (isLast ? slices[i] : slices[i + 1]).hold;
  if (isFirst && !isLast) {
    const ratio = (distance[i + 1] + distance[i + 2]) / (distance[i] + distance[i + 1]);
    target.fill(0);
    for (let node = 0; node < hold.length; node++) coupling[node] = weight * (1 - ratio) * hold[node];
    return;
  }
  const carried = isLast || slices[i + 1].isNew ? 0 : extrapolation;
  const next = isLast ? undefined : slices[i + 1].velocity;
  const was = slices[i].velocity;
  for (let node = 0; node < hold.length; node++) coupling[node] = weight * (1 - carried) * hold[node];
  for (let at = 0; at < target.length; at++) {
    target[at] = next ? (next[at] - carried * was[at]) / (1 - carried) : 0;
  }
}

/** Writes down a solved slice, and leaves in it what the next march needs. */
function record(
  { grid, problem }: Bite,
  level: Level,
  i: number,
  room: MarchRoom,
  { speed, duration, length }: Motion,
  xy: Field,
): MarchStep {
  const { task, contacts, geometry } = room;
  const { flow } = task;
  const slice = level.slices[i];
  rememberContacts(contacts, slice.memory);
  renewCaps(task);
  const rate = Float64Array.from(flow.rateSquared, Math.sqrt);
  const power = new Float64Array(grid.elements);
  const flowStress = new Float64Array(grid.elements);
  slice.hold.fill(0);
  let plastic = 0;
  for (let k = 0; k < grid.elements; k++) {
    const square = flow.rateSquared[k];
    const viscous = (flow.strength[k] * square ** ((flow.exponent[k] - 1) / 2)) / 2;
    power[k] = 2 * geometry.area[k] * viscous * (square - flow.floor) * length;
    plastic += power[k];
    flowStress[k] = (2 * viscous * rate[k]) / slice.relief[k];
    for (let a = 0; a < 4; a++) slice.hold[grid.quads[4 * k + a]] += geometry.area[k] * viscous;
  }
  const shearShare = shearOf(grid, room, task, slice, flowStress, xy, problem.wishes.inhomogeneity ?? true);
  const velocity = slice.velocity.slice();
  const touching = touchingOf(task, velocity);
  return {
    length,
    duration,
    speed,
    along: slice.along,
    velocity,
    rate,
    flowStress,
    shearShare,
    touching,
    power,
    plastic,
  };
}

/** τ over the shear yield stress per element; the slice's relief goes half of the way to what it asks for. */
function shearOf(
  grid: Bite['grid'],
  { shear, geometry, friction, contacts }: MarchRoom,
  task: SliceTask,
  slice: Slice,
  flowStress: Field,
  xy: Field,
  wanted: boolean,
): Float64Array {
  const share = new Float64Array(grid.elements);
  if (!wanted) return share;
  friction.fill(0);
  const slip = noSlip();
  for (let c = 0; c < contacts.count; c++) {
    if (!contacts.active[c]) continue;
    slipOf(task, slice.velocity, c, slip);
    friction[contacts.node[c]] -= (contacts.friction[c] * slip.along) / slip.size;
  }
  const length = screeningLength(loopArea(grid.mesh.loop, xy), skinLength(grid, xy));
  if (!spreadShear(shear, geometry, friction, length)) return share;
  for (let k = 0; k < grid.elements; k++) {
    share[k] = (Math.sqrt(3) * shear.shear[k]) / flowStress[k];
    slice.relief[k] = (slice.relief[k] + relief(shear.shear[k], flowStress[k])) / 2;
  }
  return share;
}

/** Moves the section on to the next one, strains it, and mends the mesh. */
function advance(
  { grid }: Bite,
  { velocity }: Slice,
  { duration, rate }: MarchStep,
  room: MarchRoom,
  xy: Float64Array,
  { strain, temperature }: NodeState,
  upstream: Float64Array,
): void {
  const gained = nodalMean(grid, room.geometry, rate);
  for (let node = 0; node < grid.nodes; node++) strain[node] += gained[node] * duration;
  const vx = Float64Array.from({ length: grid.nodes }, (_, node) => velocity[2 * node]);
  const vy = Float64Array.from({ length: grid.nodes }, (_, node) => velocity[2 * node + 1]);
  const parts = partsOf(grid, velocity, duration, room, xy);
  for (let part = 0; part < parts; part++) {
    for (let node = 0; node < grid.nodes; node++) {
      xy[2 * node] += (vx[node] * duration) / parts;
      xy[2 * node + 1] += (vy[node] * duration) / parts;
    }
    room.relax(xy, [strain, temperature, vx, vy]);
  }
  for (let node = 0; node < grid.nodes; node++) {
    upstream[2 * node] = vx[node];
    upstream[2 * node + 1] = vy[node];
  }
}

/** Least Jacobian over the mean that an element may have when a step is made at once; and most parts of a step. */
const [squeezed, mostParts] = [0.25, 8];

/** In how many parts a step is made, the mesh being mended in between: more where elements would be squeezed flat. */
function partsOf(
  grid: Bite['grid'],
  velocity: Field,
  duration: number,
  { halfway, probe }: MarchRoom,
  xy: Field,
): number {
  for (let at = 0; at < halfway.length; at++) halfway[at] = xy[at] + duration * velocity[at];
  let [parts, worst] = [1, measureElements(grid, halfway, probe)];
  while (worst < squeezed && parts < mostParts) {
    parts *= 2;
    worst = 1 - (1 - worst) / 2;
  }
  return parts;
}

/** Element values at the nodes: means weighted with area. */
export function nodalMean(grid: Bite['grid'], { area }: ElementGeometry, values: Field): Float64Array {
  const [sum, weight] = [new Float64Array(grid.nodes), new Float64Array(grid.nodes)];
  for (let k = 0; k < grid.elements; k++) {
    for (let a = 0; a < 4; a++) {
      sum[grid.quads[4 * k + a]] += area[k] * values[k];
      weight[grid.quads[4 * k + a]] += area[k];
    }
  }
  return sum.map((value, node) => value / weight[node]);
}
