import { fail, ok, type Result } from '../../outcome/result.ts';
import { contactLength, draughtOf } from './contact.ts';
import type { RubbedDraught } from './pass.ts';

/** What the integration finds; pressures over 2k, lengths over L, measured from the exit plane. */
export interface VonKarmanPass {
  /** Mean pressure over 2k. */
  readonly factor: number;
  readonly neutral: number;
  /** Height in the neutral plane over the height after. */
  readonly neutralHeight: number;
  readonly peak: number;
  /** Lever arm over L twice over: by the friction along the arc and by the moment of the pressure. They must agree. */
  readonly armByFriction: number;
  readonly armByPressure: number;
}

/**
 * Von Karman's equation by direct integration: parabolic gap h1 + Δh ξ², ξ = x/L from the exit; ideal plastic steel;
 * friction min(μp, k); no tension. A second implementation beside the closed laws, for thin stock (L/h_m > 1).
 * With q the lengthwise pressure and p = 2k + q:   d(h q)/dx = p dh/dx ± 2τ, + from the exit, − from the entry.
 * Second order in the steps: 400 are exact to a millionth. A Failure where the two branches do not cross: friction too
 * weak to pull the bar through.
 */
export function vonKarman(pass: RubbedDraught, steps = 400): Result<VonKarmanPass> {
  const exit = branch(pass, steps, +1);
  const entry = branch(pass, steps, -1);
  let cell = 0;
  while (cell < steps && exit[cell + 1] < entry[cell + 1]) cell++;
  if (cell === 0 || cell === steps)
    return fail({ model: 'von Karman', reason: `no neutral plane in the arc at friction ${pass.friction}` });
  const gap = (i: number) => entry[i] - exit[i];
  const neutral = (cell + gap(cell) / (gap(cell) - gap(cell + 1))) / steps;
  return ok(summed(pass, steps, exit, entry, neutral));
}

/** p/2k at each station by fourth-order Runge-Kutta, from the exit (+1) or the entry (−1). */
function branch({ h0, h1, R, friction }: RubbedDraught, steps: number, side: 1 | -1): Float64Array {
  const draught = h0 - h1;
  const L = Math.sqrt(R * draught);
  const height = (xi: number) => h1 + draught * xi * xi;
  const slope = (xi: number, hq: number): number => {
    const p = 1 + hq / height(xi);
    return p * 2 * draught * xi + side * 2 * L * Math.min(friction * p, 0.5);
  };
  const pressure = new Float64Array(steps + 1);
  const d = side / steps;
  let hq = 0;
  pressure[side > 0 ? 0 : steps] = 1;
  for (let i = 0; i < steps; i++) {
    const xi = side > 0 ? i / steps : 1 - i / steps;
    const s1 = slope(xi, hq);
    const s2 = slope(xi + d / 2, hq + (d / 2) * s1);
    const s3 = slope(xi + d / 2, hq + (d / 2) * s2);
    const s4 = slope(xi + d, hq + d * s3);
    hq += (d / 6) * (s1 + 2 * s2 + 2 * s3 + s4);
    pressure[side > 0 ? i + 1 : steps - i - 1] = 1 + hq / height(xi + d);
  }
  return pressure;
}

/** Force, moment and friction over both branches by trapezoids, the cell of the neutral plane cut in two. */
function summed(
  pass: RubbedDraught,
  steps: number,
  exit: Float64Array,
  entry: Float64Array,
  neutral: number,
): VonKarmanPass {
  const cell = Math.floor(neutral * steps);
  const peak = exit[cell] + (exit[cell + 1] - exit[cell]) * (neutral * steps - cell);
  const total = { force: 0, moment: 0, shear: 0 };
  const add = (xi0: number, p0: number, xi1: number, p1: number, pull: number) => {
    const half = (xi1 - xi0) / 2;
    total.force += half * (p0 + p1);
    total.moment += half * (p0 * xi0 + p1 * xi1);
    total.shear += pull * half * (shear(p0) + shear(p1));
  };
  const shear = (p: number) => Math.min(pass.friction * p, 0.5);
  for (let i = 0; i < cell; i++) add(i / steps, exit[i], (i + 1) / steps, exit[i + 1], -1);
  add(cell / steps, exit[cell], neutral, peak, -1);
  add(neutral, peak, (cell + 1) / steps, entry[cell + 1], +1);
  for (let i = cell + 1; i < steps; i++) add(i / steps, entry[i], (i + 1) / steps, entry[i + 1], +1);
  return {
    factor: total.force,
    neutral,
    neutralHeight: 1 + (draughtOf(pass) / pass.h1) * neutral * neutral,
    peak,
    armByFriction: ((pass.R / contactLength(pass)) * total.shear) / total.force,
    armByPressure: total.moment / total.force,
  };
}
