import type { Field } from '../../../outcome/field.ts';
import type { SliceRoom } from '../slice.ts';
import type { SliceTask } from '../slice-problem.ts';
import type { Touching } from '../touching.ts';
import type { Warping } from '../warping.ts';
import type { LinkLayout } from './link-layout.ts';

/**
 * A solved slice as the chain of slices sees it: slope and curvature of its potential, per metre of bar, in the unknowns of
 * its LinkLayout. Contacts, frictions, pull and the relief by axial shear stay as they are.
 */
export interface ChainLink {
  readonly layout: LinkLayout;
  /** m along the bar. */
  readonly length: number;
  /** Shapes of its velocities, one after the other; of the slice before, none for the first. */
  readonly shapes: Float64Array;
  readonly before: Float64Array | undefined;
  readonly slope: Float64Array;
  /** Lower triangle counts, row after row. */
  readonly curvature: Float64Array;
}

export interface SolvedSlice {
  readonly task: SliceTask;
  readonly warping: Warping;
  readonly room: SliceRoom;
  readonly velocity: Float64Array;
  readonly along: number;
  /** Its velocities before it was solved. */
  readonly was: Field;
  readonly touching: Touching;
  /** Σ A Φ′ of the elements around each node. */
  readonly hold: Field;
  readonly length: number;
  /** Whether the bar leaves it straight. */
  readonly isLast: boolean;
}

/** Room that all links of a pass use one after the other: fields of velocities, one for each unknown of a link. */
export interface LinkRoom {
  readonly bends: Float64Array;
  readonly held: Float64Array;
  /** Of a slice's own shapes alone. */
  readonly product: Float64Array;
}

export const linkRoom = ({ size, shapes }: LinkLayout, unknowns: number): LinkRoom => ({
  bends: new Float64Array(size * unknowns),
  held: new Float64Array(size * unknowns),
  product: new Float64Array(shapes * unknowns),
});
