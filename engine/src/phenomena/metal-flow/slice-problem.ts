import type { Field } from '../../outcome/field.ts';
import type { Contacts } from './contact.ts';
import type { Viscous } from './viscous.ts';

/** What one slice is asked: to find v and e that make its potential least. */
export interface SliceTask {
  readonly flow: Viscous;
  readonly contacts: Contacts;
  /** rad/s of each roll. */
  readonly turning: Float64Array;
  /** Coulomb’s coefficient of each roll, and the share of the shear yield stress that friction can reach. */
  readonly friction: Field;
  readonly shearLimit: Field;
  /** Axial force in the computed part, N, and mean speed of the step, m/s. */
  pull: number;
  speed: number;
  /** Penalty that keeps nodes out of the rolls, Pa s; slip below which friction fades, m/s. */
  stiffness: number;
  fade: number;
  /** Drag on every unknown, Pa s; and the pull towards the next slice's velocities: per node, and its target. */
  drag: number;
  readonly coupling: Float64Array;
  readonly target: Float64Array;
  /** Whether the start is only a guess. */
  isCold: boolean;
  /** How small changes must be for the slice to count as solved, over what a last march asks for; 1 and more. */
  tolerance: number;
  /** Whether contacts and frictions stay as they are: while a finer level takes over from a coarser one. */
  keepsContacts: boolean;
}

/** Its unknowns, changed in place. */
export interface SliceState {
  readonly velocity: Float64Array;
  along: number;
}

export interface SliceOutcome {
  readonly settled: boolean;
  /** |Δv|/|v| of the last iteration, 1 before the first. */
  readonly residual: number;
}
