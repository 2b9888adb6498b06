import type { Field } from '../../outcome/field.ts';
import { type Grid, skinShare } from './grid.ts';
import {
  type Nearest,
  nearestOnRoll,
  nowhere,
  outlineAt,
  type RollSurface,
  secondNearest,
} from './roll-surface.ts';

/**
 * Where skin nodes may meet rolls during one step, and how they do. A touching node obeys n·v ≤ limit: it may come no
 * nearer to the roll than the roll's own surface at the end of the step. One node may meet two faces of a roll.
 */
export interface Contacts {
  count: number;
  /** Place in a ContactMemory, skin node, mesh node and roll of each candidate. */
  readonly place: Int32Array;
  readonly skin: Int32Array;
  readonly node: Int32Array;
  readonly roll: Int32Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  /** m/s along the normal. */
  readonly limit: Float64Array;
  /** Skin that belongs to the node, m. */
  readonly share: Float64Array;
  /** Bar's speed along there, m/s; surface of the roll per rad/s: along the bar, along x and y. */
  readonly speed: Float64Array;
  readonly along: Float64Array;
  readonly acrossX: Float64Array;
  readonly acrossY: Float64Array;
  /** 1 when the node presses on the roll. */
  readonly active: Uint8Array;
  /** N per metre of bar: pressure, friction (at most `cap`). */
  readonly pressure: Float64Array;
  readonly friction: Float64Array;
  readonly cap: Float64Array;
}

/** Pressures and frictions of one slice from march to march: two faces per skin node and roll. */
export interface ContactMemory {
  readonly active: Uint8Array;
  readonly pressure: Float64Array;
  readonly friction: Float64Array;
}

export function contactMemory(skinNodes: number, rolls: number): ContactMemory {
  const size = 2 * skinNodes * rolls;
  return { active: new Uint8Array(size), pressure: new Float64Array(size), friction: new Float64Array(size) };
}

export function contactsFor(grid: Grid, rolls: number): Contacts {
  const most = 2 * rolls * grid.skin.node.length;
  const row = () => new Float64Array(most);
  const whole = () => new Int32Array(most);
  return {
    count: 0,
    ...{ place: whole(), skin: whole(), node: whole(), roll: whole() },
    ...{ nx: row(), ny: row(), limit: row(), share: row() },
    ...{ speed: row(), along: row(), acrossX: row(), acrossY: row() },
    active: new Uint8Array(most),
    ...{ pressure: row(), friction: row(), cap: row() },
  };
}

/** One step of the bar through the rolls. */
export interface Step {
  /** Distances before the exit plane at its start and end, m. */
  readonly from: number;
  readonly to: number;
  /** Of the whole bite, m. */
  readonly bite: number;
  /** Bar's mean speed, and what each node has beyond it, m/s. */
  readonly speed: number;
  readonly excess: Field;
}

/** Outlines of the rolls at both ends of a step, filled again and again. */
export type Outlines = readonly { readonly from: Float64Array; readonly to: Float64Array }[];

export const outlinesFor = (rolls: readonly RollSurface[]): Outlines =>
  rolls.map(({ profile }) => ({
    from: new Float64Array(profile.length),
    to: new Float64Array(profile.length),
  }));

/** Penetration from before is pushed out over this share of the bite. */
const pushedOutOver = 0.06;

/** Finds every skin node that may touch a roll during the step, with its last pressure and friction. */
export function findContacts(
  grid: Grid,
  rolls: readonly RollSurface[],
  outlines: Outlines,
  xy: Field,
  step: Step,
  memory: ContactMemory,
  out: Contacts,
): void {
  out.count = 0;
  const [first, second, earlier] = [nowhere(), nowhere(), nowhere()];
  const band = step.from - step.to;
  rolls.forEach((surface, r) => {
    const { from, to } = outlines[r];
    outlineAt(surface, step.from, from);
    outlineAt(surface, step.to, to);
    const front = frontOf(surface, to) + surface.beyond * -band;
    for (let s = 0; s < grid.skin.node.length; s++) {
      const at = 2 * grid.skin.node[s];
      if (surface.beyond * (xy[at + surface.across] - front) < 0) continue;
      const [x, y] = [xy[at], xy[at + 1]];
      nearestOnRoll(to, x, y, first);
      if (first.gap > band) continue;
      nearestOnRoll(from, x, y, earlier);
      const place = 2 * (s * rolls.length + r);
      add(grid, surface, s, r, xy, step, first, earlier.gap, place, memory, out);
      secondNearest(to, x, y, first, second);
      if (second.gap > band || !isBeyond(first, second)) continue;
      add(grid, surface, s, r, xy, step, second, 0, place + 1, memory, out);
    }
  });
}

/** How far, across its axis, a roll reaches towards the bar. */
function frontOf({ across, beyond }: RollSurface, outline: Field): number {
  let front = outline[across];
  for (let i = across; i < outline.length; i += 2) if (beyond * (outline[i] - front) < 0) front = outline[i];
  return front;
}

/** Whether a node set on the first face lies on the bar's side of the second: only then do both bound it. */
const isBeyond = (first: Nearest, second: Nearest): boolean =>
  second.gap - first.gap * (first.nx * second.nx + first.ny * second.ny) > -1e-6;

function add(
  grid: Grid,
  { roll, across, beyond }: RollSurface,
  s: number,
  r: number,
  xy: Field,
  step: Step,
  { gap, nx, ny }: Nearest,
  earlier: number,
  place: number,
  memory: ContactMemory,
  out: Contacts,
): void {
  const c = out.count++;
  const node = grid.skin.node[s];
  out.place[c] = place;
  out.skin[c] = s;
  out.node[c] = node;
  out.roll[c] = r;
  out.nx[c] = nx;
  out.ny[c] = ny;
  out.speed[c] = step.speed + step.excess[node];
  out.limit[c] = (approach(gap, earlier, step) * out.speed[c]) / (step.from - step.to);
  out.share[c] = skinShare(grid.skin, s, xy);
  out.along[c] = Math.abs(roll.axis - xy[2 * node + across]);
  const closing = -beyond * ((step.from + step.to) / 2);
  out.acrossX[c] = across === 0 ? closing : 0;
  out.acrossY[c] = across === 1 ? closing : 0;
  out.active[c] = memory.active[place];
  out.pressure[c] = memory.pressure[place];
  out.friction[c] = memory.friction[place];
  out.cap[c] = 0;
}

/** How far a node may still go: to the roll's surface, an old penetration being pushed out gently. */
function approach(gap: number, earlier: number, { from, to, bite }: Step): number {
  if (!(earlier < 0) || gap >= 0) return gap;
  return gap - earlier + earlier * Math.min(1, (from - to) / (pushedOutOver * bite));
}

/** Contacts as they are remembered, their set unchanged. */
export function recallContacts(
  memory: ContactMemory,
  { count, place, active, pressure, friction }: Contacts,
): void {
  for (let c = 0; c < count; c++) {
    active[c] = memory.active[place[c]];
    pressure[c] = memory.pressure[place[c]];
    friction[c] = memory.friction[place[c]];
  }
}

export function rememberContacts(
  { count, place, active, pressure, friction }: Contacts,
  memory: ContactMemory,
): void {
  memory.active.fill(0);
  for (let c = 0; c < count; c++) {
    memory.active[place[c]] = active[c];
    memory.pressure[place[c]] = pressure[c];
    memory.friction[place[c]] = friction[c];
  }
}

export function copyContacts(from: ContactMemory, to: ContactMemory): void {
  to.active.set(from.active);
  to.pressure.set(from.pressure);
  to.friction.set(from.friction);
}
