import type { Field } from '../../outcome/field.ts';
import type { Bite, Level, Slice } from './bite.ts';
import { copyContacts, findContacts } from './contact.ts';
import type { MarchRoom } from './march-room.ts';
import type { MarchMode, Motion } from './marched.ts';
import type { NodeState } from './node-state.ts';
import type { SliceTask } from './slice-problem.ts';
import type { Viscous } from './viscous.ts';

/** A slice never solved starts from the slice before it, the first one from an even squeeze. */
export function startVelocity({ scales }: Bite, level: Level, i: number, xy: Field, slice: Slice): void {
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

/** Sets the task of slice i. */
export function prepare(
  bite: Bite,
  level: Level,
  i: number,
  room: MarchRoom,
  state: NodeState,
  upstream: Field,
  mode: MarchMode,
  { speed }: Motion,
  xy: Field,
): void {
  const { grid, rolls, problem, length } = bite;
  const { task, contacts, outlines, warping } = room;
  const slice = level.slices[i];
  const { distance } = level;
  strengths(bite, slice.relief, state, task.flow);
  const spacing = spacingBefore(distance, i);
  task.flow.shear = (problem.wishes.shear ?? 1) / spacing ** 2;
  task.flow.stretch.set(warping.stretch);
  for (let at = 0; at < upstream.length; at++)
    task.flow.before[at] = upstream[at] - spacing * warping.entering[at];
  task.pull = (level.pull[i] + level.pull[i + 1]) / 2;
  task.speed = speed;
  coupleAhead(bite, level, i, mode, task, warping.leaving);
  const step = { from: distance[i], to: distance[i + 1], bite: length, speed, excess: warping.excess };
  findContacts(grid, rolls, outlines, xy, step, slice.memory, contacts);
}

/** Distance between the middles of slice i and the one before it, m; the first one stands a whole slice from rest. */
const spacingBefore = (distance: Field, i: number): number =>
  i === 0 ? distance[0] - distance[1] : (distance[i - 1] - distance[i + 1]) / 2;

function strengths(
  { grid, problem: { steel } }: Bite,
  reliefs: Field,
  { strain, temperature }: NodeState,
  { strength, ownStrength, exponent }: Viscous,
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
    ownStrength[k] = steel.strength(own, T) * steel.referenceRate ** -m;
    strength[k] = reliefs[k] * ownStrength[k];
  }
}

/** The pull of slice i + 1, as it was in the march before, on slice i. */
function coupleAhead(
  { problem }: Bite,
  { slices, distance }: Level,
  i: number,
  { isFirst, extrapolation }: MarchMode,
  { coupling, target }: SliceTask,
  leaving: Field,
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
    target[at] = next ? (next[at] + spacing * leaving[at] - carried * was[at]) / (1 - carried) : 0;
  }
}
