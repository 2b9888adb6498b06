import { coldModulus } from './elastic-modulus.ts';
import type { Grade } from './grade.ts';
import { gradeNamed } from './grades.ts';
import type { Law } from './law.ts';

/** Cold stress over plastic strain in one direction, from a rail straight off the cooling bed. Pa; strain as a number. */
export interface YieldCurve extends Law {
  readonly stress: (plasticStrain: number) => number;
  /** dσ/dε_p, Pa. */
  readonly slope: (plasticStrain: number) => number;
  /** Young's modulus, Pa. */
  readonly modulus: number;
  /** 0.2 % proof stress, Pa. */
  readonly proof: number;
}

/**
 * Base curve, R260: 400 + 250 (1 − exp(−300 ε_p)) + 6000 ε_p MPa, from memory, unconfirmed; 0.2 % proof 525 MPa. It is
 * strongly rounded on purpose: measured yield surfaces of R260 begin to flow at 336 MPa by a small plastic-work limit and
 * at 472 MPa by a large one (Meyer et al. 2020, read in a restatement of the data). Unloading and reverse flow follow by
 * a parallel overlay of sliders fitted to it. Carried on with its last slope above 5 %.
 *
 * Other grades: the whole curve scaled by the proof stress the standard asks for (AREMA), else by tensile strength over
 * the 880 MPa of R260: R350HT 701 MPa, inside the 650 to 800 MPa of handbooks. An order's own reading should replace it.
 */
export function yieldCurve(grade: Grade, proof = assumedProof(grade)): YieldCurve {
  const scale = proof / baseProof;
  return {
    name: `Rounded yield curve, ${grade.name}`,
    source: `R260 curve scaled to a 0.2 % proof stress of ${(proof / 1e6).toFixed(0)} MPa`,
    status: 'from memory, unconfirmed',
    validity: { strain: { low: 0, high: 0.05, unit: 'one' } },
    stress: (plasticStrain) => scale * base(plasticStrain),
    slope: (plasticStrain) => scale * (250e6 * 300 * Math.exp(-300 * plasticStrain) + 6000e6),
    modulus: coldModulus,
    proof,
  };
}

const base = (plasticStrain: number): number =>
  400e6 - 250e6 * Math.expm1(-300 * plasticStrain) + 6000e6 * plasticStrain;
const baseProof = base(0.002);

/** Pa. For a steel that is not in the standards' tables: that of R260. */
export function assumedProof(grade: Grade): number {
  const known = gradeNamed(grade.name);
  if (!known) return baseProof;
  return known.proof ?? (baseProof * known.tensile) / 880e6;
}
