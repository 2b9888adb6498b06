import type { Field } from '../../outcome/field.ts';
import type { BedSteel } from './bed-steel.ts';
import { type FibreSums, type Fibres, fibreSums } from './fibres.ts';
import { solveSymmetric3 } from './symmetric3.ts';

/**
 * A hot section on the bed, fibre by fibre. Strains count from the moment of last straightness: there stress is zero,
 * whatever the temperatures are, and that decides the sign of the camber at the end. Written in place by `settle`.
 */
export interface BedSection {
  readonly fibres: Fibres;
  readonly steel: BedSteel;
  readonly sums: FibreSums;
  /** Free strain at last straightness. */
  readonly reference: Float64Array;
  /** Plastic strain and strain of transformation plasticity. */
  readonly plastic: Float64Array;
  readonly transformed: Float64Array;
  /** Strain that moved the surface of yield: back stress over hardening. */
  readonly memory: Float64Array;
  readonly share: Float64Array;
  readonly stress: Float64Array;
  /** Mean strain and curvature in the height and side plane, 1/m. */
  readonly strain: Float64Array;
  readonly now: StepLaws;
  readonly work: {
    out: Float64Array;
    next: Float64Array;
    r: Float64Array;
    dz: Float64Array;
    z: Float64Array;
  };
}

/** The laws at the temperatures of one step. */
interface StepLaws {
  /** Strain that gives no stress, with all strain that stayed. */
  readonly rest: Float64Array;
  /** Modulus with transformation plasticity of the step: 1 / (1/E + K ΔΦ). */
  readonly modulus: Float64Array;
  readonly yieldStress: Float64Array;
  readonly hardening: Float64Array;
  /** K ΔΦ */
  readonly transforming: Float64Array;
}

export function bedSection(fibres: Fibres, steel: BedSteel, temperature: Field, share: Field): BedSection {
  const n = fibres.area.length;
  const row = (size = n) => new Float64Array(size);
  return {
    fibres,
    steel,
    sums: fibreSums(fibres),
    reference: Float64Array.from(fibres.area, (_, i) => steel.freeStrain(temperature[i], share[i])),
    plastic: row(),
    transformed: row(),
    memory: row(),
    share: Float64Array.from(share),
    stress: row(),
    strain: row(3),
    now: { rest: row(), modulus: row(), yieldStress: row(), hardening: row(), transforming: row() },
    work: { out: row(9), next: row(9), r: row(3), dz: row(3), z: row(3) },
  };
}

/** Sets temperature and share of pearlite for the next step and forgets what the transformation wipes out. */
export function heatTo(section: BedSection, temperature: Field, share: Field): void {
  const { steel, now, reference, plastic, transformed, memory } = section;
  for (let i = 0; i < plastic.length; i++) {
    const X = Math.min(1, Math.max(0, share[i]));
    const before = section.share[i];
    // Φ = X(2 − X), Desalos: most of the strain comes early in the transformation.
    const grown = Math.max(0, X * (2 - X) - before * (2 - before));
    const E = steel.modulus(temperature[i]);
    now.transforming[i] = steel.transformationPlasticity * grown;
    now.modulus[i] = 1 / (1 / E + now.transforming[i]);
    now.yieldStress[i] = steel.yieldStress(temperature[i], X);
    now.hardening[i] = steel.hardening(temperature[i], X);
    now.rest[i] = steel.freeStrain(temperature[i], X) - reference[i] + plastic[i] + transformed[i];
    if (X > before) memory[i] *= 1 - steel.forgotten * (X - before);
    section.share[i] = X;
  }
}

/** Which of the two curvatures are held where they are. */
export interface Holding {
  readonly height: boolean;
  readonly side: boolean;
}

const strainTolerance = 1e-12;

/**
 * Finds mean strain and the curvatures that are not held so that there is no axial force and the moments (N·m) asked of
 * the free planes; Newton from the last strains with the all-elastic predictor first, and halved steps while the
 * residual does not fall: without that an answer can be wrong in silence. Returns iterations, −1 when it fails.
 * Nothing is kept until `keep`.
 */
export function settle(section: BedSection, holding: Holding, height = 0, side = 0): number {
  const { sums, work, strain } = section;
  const { out, next, r, dz, z } = work;
  z.set(strain);
  elasticPredictor(section, holding, height, side);
  respond(section, z, out);
  let norm = missing(out, holding, height, side, sums, r);
  for (let iteration = 0; iteration < 80; iteration++) {
    if (norm < strainTolerance) return iteration;
    if (!solveSymmetric3(tangent(out, holding), 0, r, dz)) return -1;
    let [share, reached] = [1, Number.POSITIVE_INFINITY];
    for (let halving = 0; halving < 20; halving++, share /= 2) {
      for (let c = 0; c < 3; c++) z[c] += dz[c] * share;
      respond(section, z, next);
      reached = missing(next, holding, height, side, sums, r);
      if (reached < norm) break;
      for (let c = 0; c < 3; c++) z[c] -= dz[c] * share;
    }
    if (!(reached < norm)) return norm < 1e-10 ? iteration : -1;
    norm = reached;
    out.set(next);
  }
  return -1;
}

/** Moments that the section carries with the strains found last, N·m: height, side. */
export const momentsOf = ({ work }: BedSection): readonly [number, number] => [work.out[1], work.out[2]];

/** Takes over the strains found by `settle` with all that stays of them. */
export function keep(section: BedSection): void {
  const { fibres, now, plastic, transformed, memory, stress, strain, work } = section;
  const { x, y } = fibres;
  const z = work.z;
  for (let i = 0; i < plastic.length; i++) {
    const trial = now.modulus[i] * (z[0] + z[1] * y[i] + z[2] * x[i] - now.rest[i]);
    const over = Math.abs(trial - now.hardening[i] * memory[i]) - now.yieldStress[i];
    let flow = 0;
    if (over > 0)
      flow = (Math.sign(trial - now.hardening[i] * memory[i]) * over) / (now.modulus[i] + now.hardening[i]);
    stress[i] = trial - now.modulus[i] * flow;
    plastic[i] += flow;
    memory[i] += flow;
    transformed[i] += now.transforming[i] * stress[i];
    now.rest[i] += flow + now.transforming[i] * stress[i];
    // The transformation of this step is done: what follows at the same temperature must not count it again.
    now.modulus[i] = 1 / (1 / now.modulus[i] - now.transforming[i]);
    now.transforming[i] = 0;
  }
  strain.set(z);
}

/** One step with every fibre elastic: a safe start whichever way the section turns. */
function elasticPredictor(section: BedSection, holding: Holding, height: number, side: number): void {
  const { fibres, now, work, sums } = section;
  const { out, z, r, dz } = work;
  respond(section, z, out);
  missing(out, holding, height, side, sums, r);
  out.fill(0, 3);
  for (let i = 0; i < fibres.area.length; i++) addTangent(out, fibres, i, fibres.area[i] * now.modulus[i]);
  if (!solveSymmetric3(tangent(out, holding), 0, r, dz)) return;
  for (let c = 0; c < 3; c++) z[c] += dz[c];
}

/** Force, moments and the six tangent sums at the strains `z`. */
function respond({ fibres, now, memory }: BedSection, z: Float64Array, out: Float64Array): void {
  const { x, y, area } = fibres;
  out.fill(0);
  for (let i = 0; i < area.length; i++) {
    const E = now.modulus[i];
    const H = now.hardening[i];
    const trial = E * (z[0] + z[1] * y[i] + z[2] * x[i] - now.rest[i]);
    const from = trial - H * memory[i];
    const over = Math.abs(from) - now.yieldStress[i];
    const yields = over > 0;
    const stress = yields ? trial - (E * Math.sign(from) * over) / (E + H) : trial;
    const force = area[i] * stress;
    out[0] += force;
    out[1] += force * y[i];
    out[2] += force * x[i];
    addTangent(out, fibres, i, area[i] * (yields ? (E * H) / (E + H) : E));
  }
}

function addTangent(out: Float64Array, { x, y }: Fibres, i: number, stiffness: number): void {
  out[3] += stiffness;
  out[4] += stiffness * y[i];
  out[5] += stiffness * x[i];
  out[6] += stiffness * y[i] * y[i];
  out[7] += stiffness * x[i] * y[i];
  out[8] += stiffness * x[i] * x[i];
}

/** The six sums with a held plane made rigid. */
function tangent(out: Float64Array, { height, side }: Holding): Float64Array {
  const m = out.slice(3);
  if (height) [m[1], m[3], m[4]] = [0, 1, 0];
  if (side) [m[2], m[4], m[5]] = [0, 0, 1];
  return m;
}

/** Writes what is missing to `r`; returns its size as a strain of the mean modulus. */
function missing(
  have: Float64Array,
  holding: Holding,
  height: number,
  side: number,
  sums: FibreSums,
  r: Float64Array,
): number {
  r[0] = -have[0];
  r[1] = holding.height ? 0 : height - have[1];
  r[2] = holding.side ? 0 : side - have[2];
  const scale = 1e11;
  return (
    (Math.abs(r[0]) / sums.area +
      Math.abs(r[1]) / Math.sqrt(sums.area * sums.height) +
      Math.abs(r[2]) / Math.sqrt(sums.area * sums.side)) /
    scale
  );
}
