import type { Contacts } from './contact.ts';
import type { SliceTask } from './slice-problem.ts';
import type { Tangent } from './viscous.ts';

/** How far a contact goes into the roll per second, m/s: n·v less its limit. */
export function pressureOf({ node, nx, ny, limit }: Contacts, v: Float64Array, c: number): number {
  const at = 2 * node[c];
  return nx[c] * v[at] + ny[c] * v[at + 1] - limit[c];
}

/** Slip of a contact against its roll: along the bar, and across. */
export interface Slip {
  along: number;
  x: number;
  y: number;
  /** √(|s|² + fade²). */
  size: number;
}

export function slipOf(task: SliceTask, v: Float64Array, c: number, out: Slip): Slip {
  const { contacts, turning, fade } = task;
  const rate = turning[contacts.roll[c]];
  const at = 2 * contacts.node[c];
  out.along = contacts.speed[c] - rate * contacts.along[c];
  out.x = v[at] - rate * contacts.acrossX[c];
  out.y = v[at + 1] - rate * contacts.acrossY[c];
  out.size = Math.sqrt(out.along * out.along + out.x * out.x + out.y * out.y + fade * fade);
  return out;
}

export const noSlip = (): Slip => ({ along: 0, x: 0, y: 0, size: 0 });

export function addPressure(
  { contacts, stiffness, flow }: SliceTask,
  v: Float64Array,
  tangent: Tangent,
): void {
  const { columnStart } = flow.grid.flow.pattern;
  for (let c = 0; c < contacts.count; c++) {
    if (!contacts.active[c]) continue;
    const i = 2 * contacts.node[c];
    const [nx, ny] = [contacts.nx[c], contacts.ny[c]];
    const push = stiffness * pressureOf(contacts, v, c);
    tangent.slope[i] += push * nx;
    tangent.slope[i + 1] += push * ny;
    tangent.matrix[columnStart[i]] += stiffness * nx * nx;
    tangent.matrix[columnStart[i] + 1] += stiffness * nx * ny;
    tangent.matrix[columnStart[i + 1]] += stiffness * ny * ny;
  }
}

export function addFriction(task: SliceTask, v: Float64Array, tangent: Tangent): void {
  const { contacts, flow } = task;
  const { columnStart } = flow.grid.flow.pattern;
  const slip = noSlip();
  for (let c = 0; c < contacts.count; c++) {
    const T = contacts.friction[c];
    if (!contacts.active[c] || T === 0) continue;
    slipOf(task, v, c, slip);
    const i = 2 * contacts.node[c];
    const per = T / slip.size;
    const [x, y] = [slip.x / slip.size, slip.y / slip.size];
    tangent.slope[i] += per * slip.x;
    tangent.slope[i + 1] += per * slip.y;
    tangent.matrix[columnStart[i]] += per * (1 - x * x);
    tangent.matrix[columnStart[i] + 1] -= per * x * y;
    tangent.matrix[columnStart[i + 1]] += per * (1 - y * y);
  }
}

export function frictionPotential(task: SliceTask, v: Float64Array): number {
  const { contacts } = task;
  const slip = noSlip();
  let sum = 0;
  for (let c = 0; c < contacts.count; c++) {
    if (contacts.active[c]) sum += contacts.friction[c] * slipOf(task, v, c, slip).size;
  }
  return sum;
}

/** Iterations after which only the worst contact may change, against endless exchange. */
const manyAtOnce = 12;

/**
 * Renews pressures, frictions and the set of touching nodes. A node that starts to touch starts without friction: what
 * its penetration says of its pressure is not to be believed yet. Returns the largest change, 0 to 1: 1 when a contact
 * opened or closed, else the change of friction over what there is.
 */
export function changeContacts(task: SliceTask, v: Float64Array, iteration: number): number {
  const { contacts } = task;
  renewCaps(task);
  const weight = iteration < 3 ? 1 : iteration < 8 ? 0.6 : 0.35;
  let [moved, carried, switched] = [0, 1e-30, 0];
  let [worst, worstBy] = [-1, 0];
  for (let c = 0; c < contacts.count; c++) {
    const into = pressureOf(contacts, v, c);
    if (contacts.active[c]) {
      const pressure = task.stiffness * into;
      contacts.pressure[c] = pressure;
      if (task.keepsContacts) continue;
      if (pressure >= 0) {
        const most = Math.min(task.friction[contacts.roll[c]] * pressure, contacts.cap[c]);
        moved += Math.abs(most - contacts.friction[c]);
        contacts.friction[c] += weight * (most - contacts.friction[c]);
        carried += contacts.friction[c];
      } else if (contacts.friction[c] > 0.02 * contacts.cap[c]) {
        contacts.friction[c] *= 0.2;
        switched = 1;
      } else if (iteration <= manyAtOnce) {
        release(contacts, c);
        switched = 1;
      } else if (-into > worstBy) [worst, worstBy] = [c, -into];
    } else if (into > 1e-9 * task.speed) {
      if (iteration <= manyAtOnce) {
        touch(contacts, c);
        switched = 1;
      } else if (into > worstBy) [worst, worstBy] = [c, into];
    }
  }
  if (worst >= 0) {
    if (contacts.active[worst]) release(contacts, worst);
    else touch(contacts, worst);
    switched = 1;
  }
  return switched || moved / carried;
}

function touch(contacts: Contacts, c: number): void {
  contacts.active[c] = 1;
  contacts.pressure[c] = 0;
  contacts.friction[c] = 0;
}

function release(contacts: Contacts, c: number): void {
  contacts.active[c] = 0;
  contacts.pressure[c] = 0;
  contacts.friction[c] = 0;
}

/** Most that friction can carry at each contact: the shear yield stress of the steel beside it times its skin. */
export function renewCaps({ contacts, flow, shearLimit }: SliceTask): void {
  const { start, element } = flow.grid.skin;
  for (let c = 0; c < contacts.count; c++) {
    const s = contacts.skin[c];
    let stress = 0;
    for (let at = start[s]; at < start[s + 1]; at++) {
      const k = element[at];
      stress += flow.ownStrength[k] * flow.rateSquared[k] ** (flow.exponent[k] / 2);
    }
    const yieldStress = stress / (start[s + 1] - start[s]) / Math.sqrt(3);
    contacts.cap[c] = shearLimit[contacts.roll[c]] * yieldStress * contacts.share[c];
  }
}
