import type { ChainLink } from './chain/link.ts';
import type { NodeState } from './node-state.ts';
import type { Touching } from './touching.ts';

/** How a march takes account of the slice ahead. */
export interface MarchMode {
  /** First march of the coarsest level: nothing is known of the slices ahead. */
  readonly isFirst: boolean;
  /** Share by which velocities ahead are carried on with the change of this slice; 0 to 0.8. */
  readonly extrapolation: number;
  /** First march of a finer level: it only sets the section back on the rolls; contacts and frictions stay. */
  readonly takesOver: boolean;
  /** How far slices may be off, see SliceTask.tolerance: no march is solved better than the next one can use. */
  readonly tolerance: number;
  /** Whether its slices are to be linked to a chain. */
  readonly isChained: boolean;
}

/** The bar as one march found it. */
export interface March {
  readonly sections: readonly MarchSection[];
  readonly steps: readonly MarchStep[];
  /** Slices whose Newton iteration did not settle. */
  readonly unsettled: number;
  /** Relative change of the velocities that the worst of them still saw. */
  readonly residual: number;
}

export interface MarchSection extends NodeState {
  readonly xy: Float64Array;
  /** Computed part, m². */
  readonly area: number;
}

/** How the bar makes a step: mean speed along the bar, m/s; s; m. */
export interface Motion {
  readonly speed: number;
  readonly duration: number;
  readonly length: number;
}

export interface MarchStep extends Motion {
  /** Rate along the bar, 1/s. */
  readonly along: number;
  readonly velocity: Float64Array;
  readonly rate: Float64Array;
  readonly flowStress: Float64Array;
  readonly shearShare: Float64Array;
  readonly touching: Touching;
  /** Work of deformation, W, per element and in all. */
  readonly power: Float64Array;
  /** Stress along the bar per element, Pa: what plane sections need. */
  readonly axialStress: Float64Array;
  readonly plastic: number;
  /** Its link of the chain of slices; none where sections stay plane. */
  readonly link: ChainLink | undefined;
  /** m/s over the mean speed, per node. */
  readonly excess: Float64Array;
}

/** Where, m before the exit plane, and why a march could not go on. */
export interface Broken {
  readonly distance: number;
  readonly reason: string;
}

export const isBroken = (made: object): made is Broken => 'reason' in made;
