import type { Field } from '../../outcome/field.ts';
import { relief, screeningLength, spreadShear } from './axial-shear.ts';
import { type Bite, type Level, type Slice, skinLength } from './bite.ts';
import type { ChainLink } from './chain/link.ts';
import { chainLink } from './chain/linked.ts';
import { rememberContacts } from './contact.ts';
import { noSlip, renewCaps, slipOf } from './contact-forces.ts';
import type { MarchRoom } from './march-room.ts';
import type { MarchStep, Motion } from './marched.ts';
import { loopArea } from './quad-mesh.ts';
import type { SliceTask } from './slice-problem.ts';
import { touchingOf } from './touching.ts';

/** Writes down a solved slice, and leaves in it what the next march needs. */
export function stepOf(
  { grid, problem, layout }: Bite,
  level: Level,
  i: number,
  room: MarchRoom,
  { speed, duration, length }: Motion,
  xy: Field,
  was: Field,
  chained: boolean,
  before: ChainLink | undefined,
): MarchStep {
  const { task, contacts, geometry } = room;
  const { flow } = task;
  const slice = level.slices[i];
  rememberContacts(contacts, slice.memory);
  renewCaps(task);
  const rate = new Float64Array(grid.elements);
  const power = new Float64Array(grid.elements);
  const flowStress = new Float64Array(grid.elements);
  const axialStress = new Float64Array(grid.elements);
  slice.hold.fill(0);
  let plastic = 0;
  for (let k = 0; k < grid.elements; k++) {
    const square = flow.rateSquared[k];
    rate[k] = Math.sqrt(square);
    const viscous = (flow.strength[k] * square ** ((flow.exponent[k] - 1) / 2)) / 2;
    power[k] = 2 * geometry.area[k] * viscous * (square - flow.floor) * length;
    plastic += power[k];
    flowStress[k] = flow.ownStrength[k] * square ** (flow.exponent[k] / 2);
    axialStress[k] = (4 / 3) * viscous * (slice.along + flow.stretch[k]) + flow.bulk * flow.dilatation[k];
    for (let a = 0; a < 4; a++) slice.hold[grid.quads[4 * k + a]] += geometry.area[k] * viscous;
  }
  const shearShare = shearOf(grid, room, task, slice, flowStress, xy, problem.wishes.inhomogeneity ?? true);
  const velocity = slice.velocity.slice();
  const isLast = i + 1 === level.slices.length;
  if (isLast) plastic += length * straightening(task, velocity);
  const touching = touchingOf(task, velocity);
  const { warping, slice: solving, linking } = room;
  const solved = {
    task,
    warping,
    room: solving,
    velocity,
    along: slice.along,
    was,
    touching,
    hold: slice.hold,
  };
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
    axialStress,
    plastic,
    link:
      layout && linking && chained
        ? chainLink(layout, { ...solved, length, isLast }, before, linking)
        : undefined,
    excess: warping.excess.slice(),
  };
}

/** Power per metre, W/m, that straightens the flow lines where the bar leaves the bite and stops moving across. */
function straightening({ coupling }: SliceTask, velocity: Field): number {
  let sum = 0;
  for (let at = 0; at < velocity.length; at++) sum += coupling[at >> 1] * velocity[at] * velocity[at];
  return sum;
}

/** τ over the shear yield stress per element; the slice's relief goes half of the way to what it asks for. */
function shearOf(
  grid: Bite['grid'],
  { shear, geometry, friction, contacts, warping: { modes } }: MarchRoom,
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
  const how = modes.length > 0 ? 'warped' : 'plane';
  const length = screeningLength(loopArea(grid.mesh.loop, xy), skinLength(grid, xy), how);
  if (!spreadShear(shear, geometry, friction, length)) return share;
  for (let k = 0; k < grid.elements; k++) {
    share[k] = (Math.sqrt(3) * shear.shear[k]) / flowStress[k];
    slice.relief[k] = (slice.relief[k] + relief(shear.shear[k], flowStress[k])) / 2;
  }
  return share;
}
