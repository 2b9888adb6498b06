import type { ColdSection } from './cold-section.ts';
import { type FibreSums, type Fibres, fibreSums } from './fibres.ts';
import type { Overlay } from './overlay.ts';
import { solveSymmetric3 } from './symmetric3.ts';

/** A section on its way through a machine: the same data as a cold section, written in place by `bend`. */
export interface BendingSection {
  readonly fibres: Fibres;
  readonly law: Overlay;
  readonly slip: Float64Array;
  readonly strain: Float64Array;
  readonly sums: FibreSums;
  /** Stress over modulus, and the strain steps up and down within which no slider of the fibre begins to slip. */
  readonly stress: Float64Array;
  readonly slackUp: Float64Array;
  readonly slackDown: Float64Array;
  /** Axial force and the two moments over the modulus as they are now, then the six tangent sums of the last step. */
  readonly now: Float64Array;
  /** Moments over the modulus that the last step added. */
  readonly lastStep: Float64Array;
  readonly work: {
    r: Float64Array;
    dz: Float64Array;
    z: Float64Array;
    next: Float64Array;
    fit: Float64Array;
  };
}

export function bendingSection(section: ColdSection): BendingSection {
  const row = (n: number) => new Float64Array(n);
  const fibres = section.fibres.area.length;
  const moving: BendingSection = {
    fibres: section.fibres,
    law: section.law,
    slip: Float64Array.from(section.slip),
    strain: Float64Array.from(section.strain),
    sums: fibreSums(section.fibres),
    stress: row(fibres),
    slackUp: row(fibres),
    slackDown: row(fibres),
    now: row(9),
    lastStep: row(2),
    work: { r: row(3), dz: row(3), z: row(3), next: row(9), fit: row(9) },
  };
  refresh(moving);
  return moving;
}

/** A copy that later bending leaves alone. */
export const asColdSection = ({ fibres, law, slip, strain }: BendingSection): ColdSection => ({
  fibres,
  law,
  slip: Float64Array.from(slip),
  strain: [strain[0], strain[1], strain[2]],
});

/** Puts the section back to a memory and strain it had before. */
export function restore(section: BendingSection, slip: Float64Array, strain: Float64Array): void {
  section.slip.set(slip);
  section.strain.set(strain);
  refresh(section);
}

/** Works out again what follows from the slips. */
function refresh(section: BendingSection): void {
  const { work, now, lastStep } = section;
  section.slackUp.fill(-1);
  section.slackDown.fill(-1);
  work.z.fill(0);
  commit(section, work.z);
  respond(section, work.z, now);
  lastStep.fill(0);
}

const strainTolerance = 1e-12;

/**
 * Bends the section until it carries the two moments (N·m) and no axial force: a 3×3 Newton in mean strain and the two
 * curvatures with halving of steps that do not lower the residual. The problem is convex, so the answer is unique.
 * Returns the iterations used, −1 when no step helps any more; then the section is left as it was.
 */
export function bend(section: BendingSection, heightMoment: number, sideMoment: number): number {
  const { law, sums, work, now, lastStep } = section;
  const { r, dz, z, next, fit } = work;
  const height = heightMoment / law.modulus;
  const side = sideMoment / law.modulus;
  const [addedHeight, addedSide] = [height - now[1], side - now[2]];
  let norm = missing(now, height, side, sums, r);
  z.fill(0);
  // While loading goes on, the last tangent serves; after turning round every fibre answers elastically at first.
  fit.set(now);
  if (!(lastStep[0] * addedHeight + lastStep[1] * addedSide > 0)) elasticTangent(sums, fit);
  for (let iteration = 0; iteration < 60; iteration++) {
    if (norm < strainTolerance) {
      commit(section, z);
      now.set(fit);
      lastStep[0] = addedHeight;
      lastStep[1] = addedSide;
      for (let c = 0; c < 3; c++) section.strain[c] += z[c];
      return iteration;
    }
    if (!solveSymmetric3(fit, 3, r, dz)) return -1;
    const reached = shortened(section, height, side, norm);
    if (reached < norm) {
      norm = reached;
      fit.set(next);
    } else if (iteration === 0) {
      missing(now, height, side, sums, r);
      elasticTangent(sums, fit);
    } else return -1;
  }
  return -1;
}

/** Adds the step to the strains, halved until it lowers what is missing; takes it back when nothing helps. */
function shortened(section: BendingSection, height: number, side: number, norm: number): number {
  const { work, sums } = section;
  const { z, dz, next, r } = work;
  let [share, reached] = [1, Number.POSITIVE_INFINITY];
  for (let halving = 0; halving < 12; halving++, share /= 2) {
    for (let c = 0; c < 3; c++) z[c] += dz[c] * share;
    respond(section, z, next);
    reached = missing(next, height, side, sums, r);
    if (reached < norm) break;
    for (let c = 0; c < 3; c++) z[c] -= dz[c] * share;
  }
  return reached;
}

function elasticTangent(sums: FibreSums, out: Float64Array): void {
  out[3] = sums.area;
  out[4] = 0;
  out[5] = 0;
  out[6] = sums.height;
  out[7] = sums.mixed;
  out[8] = sums.side;
}

/** Response to an increment of strains: force and moments over the modulus, then the six tangent sums. */
function respond(section: BendingSection, z: Float64Array, out: Float64Array): void {
  const { fibres, law, slip, stress: before, slackUp, slackDown } = section;
  const { x, y, area } = fibres;
  const { bound, share } = law;
  const sliders = bound.length;
  const [e0, kh, ks] = [z[0], z[1], z[2]];
  let [n, mh, ms, t00, t01, t02, t11, t12, t22] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < area.length; i++) {
    const xi = x[i];
    const yi = y[i];
    const step = e0 + kh * yi + ks * xi;
    let stress = before[i] + step;
    let tangent = 1;
    if (step > slackUp[i] || step < slackDown[i]) {
      stress = 0;
      tangent = 0;
      for (let j = 0, at = i * sliders; j < sliders; j++, at++) {
        const s = slip[at] + step;
        const b = bound[j];
        if (s > b) stress += share[j] * b;
        else if (s < -b) stress -= share[j] * b;
        else {
          stress += share[j] * s;
          tangent += share[j];
        }
      }
    }
    const force = area[i] * stress;
    const stiffness = area[i] * tangent;
    n += force;
    mh += force * yi;
    ms += force * xi;
    t00 += stiffness;
    t01 += stiffness * yi;
    t02 += stiffness * xi;
    t11 += stiffness * yi * yi;
    t12 += stiffness * xi * yi;
    t22 += stiffness * xi * xi;
  }
  out[0] = n;
  out[1] = mh;
  out[2] = ms;
  out[3] = t00;
  out[4] = t01;
  out[5] = t02;
  out[6] = t11;
  out[7] = t12;
  out[8] = t22;
}

/** Writes what is missing to `r` and returns its size as a strain. */
function missing(have: Float64Array, height: number, side: number, sums: FibreSums, r: Float64Array): number {
  r[0] = -have[0];
  r[1] = height - have[1];
  r[2] = side - have[2];
  const asStrain = (moment: number, inertia: number) =>
    inertia > 0 ? Math.abs(moment) / Math.sqrt(sums.area * inertia) : 0;
  return Math.abs(r[0]) / sums.area + asStrain(r[1], sums.height) + asStrain(r[2], sums.side);
}

/** Takes an increment over into the slips, and notes how far each fibre can go before a slider slips. */
function commit({ fibres, law, slip, stress, slackUp, slackDown }: BendingSection, z: Float64Array): void {
  const { x, y, area } = fibres;
  const { bound, share } = law;
  const sliders = bound.length;
  for (let i = 0; i < area.length; i++) {
    const step = z[0] + z[1] * y[i] + z[2] * x[i];
    let [sum, up, down] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let j = 0, at = i * sliders; j < sliders; j++, at++) {
      const b = bound[j];
      let s = slip[at] + step;
      if (s > b) s = b;
      else if (s < -b) s = -b;
      slip[at] = s;
      sum += share[j] * s;
      if (b - s < up) up = b - s;
      if (-b - s > down) down = -b - s;
    }
    stress[i] = sum;
    slackUp[i] = up;
    slackDown[i] = down;
  }
}
