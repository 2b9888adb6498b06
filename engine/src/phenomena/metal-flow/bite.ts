import type { Field } from '../../outcome/field.ts';
import { type LinkLayout, linkLayout } from './chain/link-layout.ts';
import { type ContactMemory, contactMemory, copyContacts } from './contact.ts';
import { type Grid, gridOf } from './grid.ts';
import type { FlowProblem } from './problem.ts';
import { copies, loopArea, type Symmetry, skin } from './quad-mesh.ts';
import {
  largestRadius,
  nearestOnRoll,
  nowhere,
  outlineAt,
  type RollSurface,
  rollSurface,
} from './roll-surface.ts';
import { warpingModes } from './warping-modes.ts';

/** A pass being solved: what does not change from march to march, and the slices with what they remember. */
export interface Bite {
  readonly problem: FlowProblem;
  readonly grid: Grid;
  readonly rolls: readonly RollSurface[];
  /** m from the first contact to the exit plane. */
  readonly length: number;
  readonly scales: Scales;
  /** Shapes in which the speed along the bar may differ over the section, at its entering nodes. */
  readonly modes: readonly Float64Array[];
  /** Of the chain of slices; none where sections stay plane. */
  readonly layout: LinkLayout | undefined;
}

/** Reference values that make penalties and limits independent of units and size. */
export interface Scales {
  /** m/s of the driven rolls' surface; 1/s; Pa; Pa s. */
  readonly speed: number;
  readonly rate: number;
  readonly stress: number;
  readonly viscosity: number;
  /** Area of the computed part on entering, m². */
  readonly area: number;
}

/** One level of slices, refined from the level before. */
export interface Level {
  /** Distances before the exit plane of the sections, slices + 1, falling to 0. */
  readonly distance: Float64Array;
  readonly slices: readonly Slice[];
  /** Axial force in the computed part at the sections, N. */
  readonly pull: Float64Array;
  /** m/s by which each mode warps the sections. */
  readonly warping: readonly Float64Array[];
  /** Volume per second through the computed part, m³/s. */
  flow: number;
  /** rad/s of the rolls. */
  readonly turning: Float64Array;
}

/** What a slice remembers from march to march. */
export interface Slice {
  readonly velocity: Float64Array;
  along: number;
  readonly memory: ContactMemory;
  /** Share of the flow stress that axial shear leaves, per element. */
  readonly relief: Float64Array;
  /** Σ A Φ′ of the elements around each node: how strongly it holds to its neighbours along the bar. */
  readonly hold: Float64Array;
  isNew: boolean;
}

/**
 * With more of them the full solutions are met no better than they are known. A section computed whole needs twice as many:
 * half of its modes lean to a side.
 */
const usualModes = ({ x, y }: Symmetry): number => (x === undefined && y === undefined ? 8 : 4);

export function biteOf(problem: FlowProblem): Bite | undefined {
  const rolls = problem.rolls.map(rollSurface);
  const grid = gridOf(problem.mesh);
  const length = firstContact(grid, rolls, problem.mesh.xy);
  if (length === undefined) return undefined;
  const modes = warpingModes(
    grid,
    problem.mesh.xy,
    problem.wishes.warping ?? usualModes(problem.mesh.symmetry),
  );
  const layout = modes.length > 0 ? linkLayout(modes.length) : undefined;
  return { problem, grid, rolls, length, scales: scalesOf(problem, rolls, length), modes, layout };
}

function scalesOf(
  { steel, rolls, mesh, temperature, strain }: FlowProblem,
  surfaces: readonly RollSurface[],
  length: number,
): Scales {
  const speeds = surfaces.flatMap((surface) => {
    const { turning } = surface.roll;
    return turning === 'idle' ? [] : [largestRadius(surface) * Math.abs(turning)];
  });
  const speed = speeds.length > 0 ? Math.max(...speeds) : rolls.length;
  const rate = (0.25 * speed) / length;
  const m = steel.exponent(temperature[0]);
  const stress = steel.strength(strain[0] + 0.1, temperature[0]) * (rate / steel.referenceRate) ** m;
  return { speed, rate, stress, viscosity: stress / (3 * rate), area: loopArea(mesh.loop, mesh.xy) };
}

/** Side of a square as large as the whole section on entering, m. */
export const sizeOf = ({ problem, scales }: Bite): number =>
  Math.sqrt(copies(problem.mesh.symmetry) * scales.area);

/** slices: in the bite; ahead: before it. */
export function levelOf(bite: Bite, slices: number, ahead: number): Level {
  const { grid, rolls, length, scales, problem, modes } = bite;
  const distance = distancesOf(length, slices, ahead, sizeOf(bite));
  const count = distance.length - 1;
  return {
    distance,
    slices: Array.from({ length: count }, () => newSlice(grid, rolls.length)),
    pull: entryPull(problem, scales.area, count + 1),
    warping: modes.map(() => new Float64Array(count + 1)),
    flow: scales.speed * scales.area,
    turning: Float64Array.from(problem.rolls, ({ turning }) => (turning === 'idle' ? 0 : turning)),
  };
}

/** Before anything is known the pull of the entry reigns everywhere, N. */
const entryPull = ({ tension }: FlowProblem, area: number, sections: number): Float64Array =>
  new Float64Array(sections).fill((tension?.entry ?? 0) * area);

/** Slices are thinner where the roll comes in steeply. */
const crowding = 0.8;

/**
 * Ahead of the bite the bar already bends towards the rolls, over so much of its size, in slices that grow away from
 * the bite. Each halving of the slices keeps the old sections among the new ones, so that a level can go on from the
 * one before.
 */
const reachAhead = 0.4;

function distancesOf(length: number, slices: number, ahead: number, size: number): Float64Array {
  const bite = Array.from({ length: slices + 1 }, (_, i) => length * (1 - i / slices) ** crowding);
  const growth = growthOf((length - bite[1]) / (reachAhead * size), ahead);
  const reach = Array.from({ length: ahead }, (_, i) => {
    const share = (Math.exp(growth * (1 - i / ahead)) - 1) / (Math.exp(growth) - 1);
    return length + reachAhead * size * share;
  });
  return Float64Array.from([...reach, ...bite]);
}

/** Exponent with which `count` slices grow from about `first`, a share of their sum. */
function growthOf(first: number, count: number): number {
  let [low, high] = [1e-3, 12];
  for (let i = 0; i < 40; i++) {
    const growth = (low + high) / 2;
    if ((Math.exp(growth / count) - 1) / (Math.exp(growth) - 1) > first) low = growth;
    else high = growth;
  }
  return low;
}

const newSlice = (grid: Grid, rolls: number): Slice => ({
  velocity: new Float64Array(2 * grid.nodes),
  along: 0,
  memory: contactMemory(grid.skin.node.length, rolls),
  relief: new Float64Array(grid.elements).fill(1),
  hold: new Float64Array(grid.nodes),
  isNew: true,
});

export function copySlice(from: Slice, to: Slice): void {
  to.velocity.set(from.velocity);
  to.along = from.along;
  copyContacts(from.memory, to.memory);
  to.relief.set(from.relief);
  to.hold.set(from.hold);
  to.isNew = from.isNew;
}

export function copyOfSlice({ grid, rolls }: Bite, slice: Slice): Slice {
  const copy = newSlice(grid, rolls.length);
  copySlice(slice, copy);
  return copy;
}

/** Distance before the exit plane at which a roll first touches the section, m; nothing when none does. */
export function firstContact(grid: Grid, rolls: readonly RollSurface[], xy: Field): number | undefined {
  const deepest = (distance: number) => smallestGap(grid, rolls, xy, distance);
  if (deepest(0) >= 0) return undefined;
  let [low, high] = [0, 0.7 * Math.min(...rolls.map(largestRadius))];
  if (deepest(high) < 0) return high;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (deepest(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
}

function smallestGap(grid: Grid, rolls: readonly RollSurface[], xy: Field, distance: number): number {
  const nearest = nowhere();
  let least = Number.POSITIVE_INFINITY;
  for (const surface of rolls) {
    const outline = new Float64Array(surface.profile.length);
    outlineAt(surface, distance, outline);
    for (const node of grid.skin.node) {
      nearestOnRoll(outline, xy[2 * node], xy[2 * node + 1], nearest);
      least = Math.min(least, nearest.gap);
    }
  }
  return least;
}

/** Length of the skin of the computed part, m. */
export function skinLength({ mesh: { loop, lies } }: Grid, xy: Field): number {
  let sum = 0;
  for (let i = 0; i < loop.length; i++) {
    if (lies[i] !== skin) continue;
    const [a, b] = [2 * loop[i], 2 * loop[(i + 1) % loop.length]];
    sum += Math.hypot(xy[b] - xy[a], xy[b + 1] - xy[a + 1]);
  }
  return sum;
}
