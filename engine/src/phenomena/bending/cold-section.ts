import type { Field } from '../../outcome/field.ts';
import { type FibreSums, type Fibres, fibreSums } from './fibres.ts';
import { type Overlay, strainAtFirstLoading } from './overlay.ts';
import { solveSymmetric3 } from './symmetric3.ts';

export type Plane = 'height' | 'side';

/**
 * A cold section with the memory of all that was done to it. Read-only; `bent` sections are made from it.
 * slip       elastic strain of every slider, fibre by fibre: slip[fibre·sliders + slider]
 * strain     mean strain, curvature in the height plane and in the side plane (1/m), from the straight, unloaded bar
 */
export interface ColdSection {
  readonly fibres: Fibres;
  readonly law: Overlay;
  readonly slip: Field;
  readonly strain: readonly [number, number, number];
}

/** A section from the bed: residual stress (Pa per fibre) as if each fibre had been loaded to it once. */
export function coldSection(
  fibres: Fibres,
  law: Overlay,
  stress?: Field,
  camber: readonly [number, number] = [0, 0],
): ColdSection {
  const sliders = law.bound.length;
  const slip = new Float64Array(fibres.area.length * sliders);
  for (let i = 0; stress && i < fibres.area.length; i++) {
    const strain = strainAtFirstLoading(law, stress[i]);
    for (let j = 0; j < sliders; j++) {
      slip[i * sliders + j] = Math.max(-law.bound[j], Math.min(law.bound[j], strain));
    }
  }
  return { fibres, law, slip, strain: [0, camber[0], camber[1]] };
}

/** Stress of every fibre, Pa. */
export function stressOf({ fibres, law, slip }: ColdSection): Float64Array {
  const sliders = law.bound.length;
  return Float64Array.from(fibres.area, (_, i) => {
    let sum = 0;
    for (let j = 0; j < sliders; j++) sum += law.share[j] * slip[i * sliders + j];
    return law.modulus * sum;
  });
}

/** Moment (N·m) and curvature (1/m) at which the outermost fibre of a stress-free section first yields. */
export function firstYield(fibres: Fibres, law: Overlay, plane: Plane) {
  const sums = fibreSums(fibres);
  const reach = plane === 'height' ? Math.max(sums.up, sums.down) : Math.max(sums.left, sums.right);
  const curvature = law.bound[0] / reach;
  return { curvature, moment: law.modulus * sums[plane] * curvature };
}

/** The section on its way through a machine: the same data, written in place by `bend`. Made once per machine. */
export interface BendingSection {
  readonly fibres: Fibres;
  readonly law: Overlay;
  readonly slip: Float64Array;
  readonly strain: Float64Array;
  readonly sums: FibreSums;
  readonly work: {
    r: Float64Array;
    dz: Float64Array;
    z: Float64Array;
    now: Float64Array;
    next: Float64Array;
  };
}

export function bendingSection(section: ColdSection): BendingSection {
  const row = (n: number) => new Float64Array(n);
  return {
    fibres: section.fibres,
    law: section.law,
    slip: Float64Array.from(section.slip),
    strain: Float64Array.from(section.strain),
    sums: fibreSums(section.fibres),
    work: { r: row(3), dz: row(3), z: row(3), now: row(9), next: row(9) },
  };
}

/** A copy that later bending leaves alone. */
export const asColdSection = ({ fibres, law, slip, strain }: BendingSection): ColdSection => ({
  fibres,
  law,
  slip: Float64Array.from(slip),
  strain: [strain[0], strain[1], strain[2]],
});

const strainTolerance = 1e-12;

/**
 * Bends the section until it carries the two moments (N·m) and no axial force: a 3×3 Newton in mean strain and the two
 * curvatures with halving of steps that do not lower the residual. The problem is convex, so the answer is unique.
 * Returns the iterations used, −1 when no step helps any more; then the section is left as it was.
 */
export function bend(section: BendingSection, heightMoment: number, sideMoment: number): number {
  const { law, sums, work, strain } = section;
  const { r, dz, z, now, next } = work;
  const height = heightMoment / law.modulus;
  const side = sideMoment / law.modulus;
  // At rest every slider counts as elastic, so the first step is the all-elastic predictor.
  z.fill(0);
  respond(section, z, now);
  let norm = missing(now, height, side, sums, r);
  for (let iteration = 0; iteration < 60; iteration++) {
    if (norm < strainTolerance) {
      commit(section, z);
      for (let c = 0; c < 3; c++) strain[c] += z[c];
      return iteration;
    }
    if (!solveSymmetric3(now.subarray(3), r, dz)) return -1;
    let share = 1;
    let reached = Number.POSITIVE_INFINITY;
    for (let halving = 0; halving < 12; halving++, share /= 2) {
      for (let c = 0; c < 3; c++) z[c] += dz[c] * share;
      respond(section, z, next);
      reached = missing(next, height, side, sums, r);
      if (reached < norm) break;
      for (let c = 0; c < 3; c++) z[c] -= dz[c] * share;
    }
    if (!(reached < norm)) return -1;
    norm = reached;
    now.set(next);
  }
  return -1;
}

/** Response to an increment of strains: force and moments over the modulus, then the six tangent sums. */
function respond({ fibres, law, slip }: BendingSection, z: Float64Array, out: Float64Array): void {
  const { x, y, area } = fibres;
  const { bound, share } = law;
  const sliders = bound.length;
  const [e0, kh, ks] = [z[0], z[1], z[2]];
  let [n, mh, ms, t00, t01, t02, t11, t12, t22] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0, at = 0; i < area.length; i++) {
    const step = e0 + kh * y[i] + ks * x[i];
    let [stress, tangent] = [0, 0];
    for (let j = 0; j < sliders; j++, at++) {
      const s = slip[at] + step;
      const b = bound[j];
      if (s > b) stress += share[j] * b;
      else if (s < -b) stress -= share[j] * b;
      else {
        stress += share[j] * s;
        tangent += share[j];
      }
    }
    const force = area[i] * stress;
    const stiffness = area[i] * tangent;
    n += force;
    mh += force * y[i];
    ms += force * x[i];
    t00 += stiffness;
    t01 += stiffness * y[i];
    t02 += stiffness * x[i];
    t11 += stiffness * y[i] * y[i];
    t12 += stiffness * x[i] * y[i];
    t22 += stiffness * x[i] * x[i];
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
  return (
    Math.abs(r[0]) / sums.area +
    Math.abs(r[1]) / Math.sqrt(sums.area * sums.height) +
    Math.abs(r[2]) / Math.sqrt(sums.area * sums.side)
  );
}

function commit({ fibres, law, slip }: BendingSection, z: Float64Array): void {
  const { x, y, area } = fibres;
  const { bound } = law;
  const sliders = bound.length;
  for (let i = 0, at = 0; i < area.length; i++) {
    const step = z[0] + z[1] * y[i] + z[2] * x[i];
    for (let j = 0; j < sliders; j++, at++) {
      const s = slip[at] + step;
      slip[at] = s > bound[j] ? bound[j] : Math.max(s, -bound[j]);
    }
  }
}
