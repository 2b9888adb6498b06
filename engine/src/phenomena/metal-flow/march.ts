import type { Field } from '../../outcome/field.ts';
import type { Bite, Level } from './bite.ts';
import type { ChainLink } from './chain/link.ts';
import { recallContacts } from './contact.ts';
import { leastJacobian, measureElements } from './element-geometry.ts';
import type { MarchRoom } from './march-room.ts';
import {
  type Broken,
  isBroken,
  type March,
  type MarchMode,
  type MarchSection,
  type MarchStep,
  type Motion,
} from './marched.ts';
import { copyOfState, type NodeState, stateOf } from './node-state.ts';
import { loopArea } from './quad-mesh.ts';
import { advance } from './section-state.ts';
import { solveSlice } from './slice.ts';
import type { SliceOutcome } from './slice-problem.ts';
import { stepOf } from './slice-step.ts';
import { prepare, startVelocity } from './slice-task.ts';
import { warp } from './warping.ts';

/** Carries the entering section through all slices once. */
export function march(bite: Bite, level: Level, room: MarchRoom, mode: MarchMode): March | Broken {
  const { mesh } = bite.problem;
  const bar: Travelling = {
    xy: Float64Array.from(mesh.xy),
    state: stateOf(bite),
    upstream: new Float64Array(2 * bite.grid.nodes),
  };
  room.heat.touched.fill(0);
  bite.modes.forEach((mode, m) => {
    room.warping.modes[m].set(mode);
  });
  room.task.turning.set(level.turning);
  room.task.keepsContacts = mode.takesOver;
  room.task.tolerance = mode.tolerance;
  const [sections, steps]: [MarchSection[], MarchStep[]] = [[], []];
  let [unsettled, residual] = [0, 0];
  for (let i = 0; i < level.slices.length; i++) {
    const section = sectionNow(mesh.loop, bar);
    sections.push(section);
    const made = crossSlice(bite, level, i, room, mode, bar, section.area, steps[i - 1]?.link);
    if (isBroken(made)) return made;
    steps.push(made.step);
    if (made.settled) continue;
    unsettled++;
    residual = Math.max(residual, made.residual);
  }
  if (!(leastJacobian(bite.grid, bar.xy) > 0)) {
    return broken(0, 'an element turned over');
  }
  sections.push(sectionNow(mesh.loop, bar));
  return { sections, steps, unsettled, residual };
}

/** The section on its way, changed by every slice. */
interface Travelling {
  readonly xy: Float64Array;
  readonly state: NodeState;
  /** Velocities with which it comes out of the slice before. */
  readonly upstream: Float64Array;
}

const sectionNow = (loop: Field, { xy, state }: Travelling): MarchSection => ({
  xy: xy.slice(),
  area: loopArea(loop, xy),
  ...copyOfState(state),
});

interface Crossed extends SliceOutcome {
  readonly step: MarchStep;
}

function crossSlice(
  bite: Bite,
  level: Level,
  i: number,
  room: MarchRoom,
  mode: MarchMode,
  { xy, state, upstream }: Travelling,
  area: number,
  before: ChainLink | undefined,
): Crossed | Broken {
  const slice = level.slices[i];
  const was = slice.velocity.slice();
  room.task.isCold = slice.isNew;
  if (slice.isNew) startVelocity(bite, level, i, xy, slice);
  const motion = motionThrough(level, i, area);
  const halfway = room.task.isCold ? 0 : motion.duration / 2;
  if (!measureHalfway(bite, xy, slice.velocity, halfway, room))
    return broken(level.distance[i], 'an element turned over');
  warp(bite.grid, room.geometry, level.warping, i, motion, slice.velocity, room.warping);
  prepare(bite, level, i, room, state, upstream, mode, motion, xy);
  const solved = solveSlice(room.task, slice, room.slice, () => {
    startVelocity(bite, level, i, xy, slice);
    recallContacts(slice.memory, room.contacts);
  });
  if (!Number.isFinite(slice.along)) return broken(level.distance[i], 'a slice has no solution');
  const step = stepOf(bite, level, i, room, motion, xy, was, mode.isChained, before);
  advance(bite, slice, step, room, xy, state, upstream);
  return { step, ...solved };
}

/** Volume flow gives the speed on entering; the rate along the bar, as last known, what it gains on half of the way. */
function motionThrough({ flow, slices, distance }: Level, i: number, area: number): Motion {
  const length = distance[i] - distance[i + 1];
  const entering = flow / area;
  const gained = Math.max(-0.3 * entering, Math.min(0.3 * entering, (slices[i].along * length) / 2));
  return { speed: entering + gained, duration: length / (entering + gained), length };
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

const broken = (distance: number, reason: string): Broken => ({ distance, reason });
