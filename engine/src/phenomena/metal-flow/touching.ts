import type { Field } from '../../outcome/field.ts';
import { noSlip, slipOf } from './contact-forces.ts';
import type { SliceTask } from './slice-problem.ts';

/** The touching nodes of one solved slice: all that speeds and pulls are worked out from without solving it again. */
export interface Touching {
  readonly count: number;
  readonly node: Int32Array;
  readonly roll: Int32Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  /** Skin of each node, m. */
  readonly share: Float64Array;
  /** N per metre of bar. */
  readonly pressure: Float64Array;
  readonly friction: Float64Array;
  readonly cap: Float64Array;
  /** Coulomb's coefficient. */
  readonly coefficient: Float64Array;
  /** Bar's velocity across, m/s; the roll's surface per rad/s. */
  readonly vx: Float64Array;
  readonly vy: Float64Array;
  readonly along: Float64Array;
  readonly acrossX: Float64Array;
  readonly acrossY: Float64Array;
  /** Slip along the bar, m/s, negative where the roll runs ahead; and power that goes into it, W per metre of bar. */
  readonly slip: Float64Array;
  /** Friction on the roll across the bar, N per metre of bar. */
  readonly pushX: Float64Array;
  readonly pushY: Float64Array;
  readonly slipPower: Float64Array;
  /** Speed of the bar along there, m/s; size of the slip, faded. */
  readonly speed: Float64Array;
  readonly slipSize: Float64Array;
  readonly slipX: Float64Array;
  readonly slipY: Float64Array;
  readonly fade: number;
}

export function touchingOf(task: SliceTask, v: Float64Array): Touching {
  const { contacts, friction, fade } = task;
  const active = activeOf(contacts);
  const slips = slipsOf(task, v, active);
  return {
    count: active.length,
    node: picked(active, contacts.node, new Int32Array(active.length)),
    roll: picked(active, contacts.roll, new Int32Array(active.length)),
    ...{ nx: pick(active, contacts.nx), ny: pick(active, contacts.ny), share: pick(active, contacts.share) },
    ...{ pressure: pick(active, contacts.pressure), friction: pick(active, contacts.friction) },
    cap: pick(active, contacts.cap),
    coefficient: Float64Array.from(active, (c) => friction[contacts.roll[c]]),
    vx: Float64Array.from(active, (c) => v[2 * contacts.node[c]]),
    vy: Float64Array.from(active, (c) => v[2 * contacts.node[c] + 1]),
    ...{ along: pick(active, contacts.along) },
    ...{ acrossX: pick(active, contacts.acrossX), acrossY: pick(active, contacts.acrossY) },
    ...slips,
    ...{ speed: pick(active, contacts.speed), fade },
  };
}

function activeOf({ count, active }: SliceTask['contacts']): Int32Array {
  const touching = new Int32Array(count);
  let found = 0;
  for (let c = 0; c < count; c++) if (active[c]) touching[found++] = c;
  return touching.subarray(0, found);
}

function picked<Row extends Int32Array | Float64Array>(active: Int32Array, row: Field, out: Row): Row {
  for (let n = 0; n < active.length; n++) out[n] = row[active[n]];
  return out;
}

const pick = (active: Int32Array, row: Field): Float64Array =>
  picked(active, row, new Float64Array(active.length));

function slipsOf(task: SliceTask, v: Float64Array, active: Int32Array) {
  const row = () => new Float64Array(active.length);
  const out = {
    slip: row(),
    pushX: row(),
    pushY: row(),
    slipPower: row(),
    slipSize: row(),
    slipX: row(),
    slipY: row(),
  };
  const slip = noSlip();
  for (let n = 0; n < active.length; n++) {
    const { along, x, y, size } = slipOf(task, v, active[n], slip);
    const per = task.contacts.friction[active[n]] / size;
    out.slip[n] = along;
    out.slipSize[n] = size;
    out.slipX[n] = x;
    out.slipY[n] = y;
    out.pushX[n] = per * x;
    out.pushY[n] = per * y;
    out.slipPower[n] = per * (along * along + x * x + y * y);
  }
  return out;
}

/** Forces of one slice on the bar at other speeds than it was solved for. */
export interface SliceForces {
  /** N per metre along the bar. */
  along: number;
  /** W per metre that each roll brings into the bar; per metre lost in slip. */
  readonly power: Float64Array;
  slipPower: number;
}

/**
 * Axial force and roll powers of a slice when the bar runs `ratio` times as fast and the rolls turn at `turning`, with
 * the pull in the bar higher by `pull` Pa, which lowers the pressures. Pressure does no net work: what it takes along
 * the bar it gives across it.
 */
export function forcesAt(
  touching: Touching,
  ratio: number,
  turning: Field,
  pull: number,
  out: SliceForces,
): void {
  const { count, roll, nx, ny, share, coefficient, cap, vx, vy, speed, fade } = touching;
  out.along = 0;
  out.slipPower = 0;
  out.power.fill(0);
  for (let c = 0; c < count; c++) {
    const was = touching.pressure[c];
    const pressure = Math.max(0.2 * was, was - share[c] * pull);
    const slope = (nx[c] * vx[c] + ny[c] * vy[c]) / speed[c];
    const rate = turning[roll[c]];
    const rollAlong = rate * touching.along[c];
    const [rollX, rollY] = [rate * touching.acrossX[c], rate * touching.acrossY[c]];
    const [sx, sy, sz] = [ratio * vx[c] - rollX, ratio * vy[c] - rollY, ratio * speed[c] - rollAlong];
    const size = Math.sqrt(sx * sx + sy * sy + sz * sz + fade * fade);
    const per = Math.min(coefficient[c] * pressure, cap[c]) / size;
    out.along += pressure * slope - per * sz;
    out.power[roll[c]] -= per * (sx * rollX + sy * rollY + sz * rollAlong);
    out.slipPower += per * (sx * sx + sy * sy + sz * sz);
  }
}
