import type { Composition } from '../../steel/grade.ts';

/**
 * What happens to the height of a bar between two rolls, in the letters of every rolling handbook; m.
 * For a grooved pass take the equivalent rectangle: area over width, and the mean working radius.
 *
 * h0, h1   height before and after       b0   width before       R   roll radius (flattened: see hitchcock.ts)
 */
export interface Draught {
  readonly h0: number;
  readonly h1: number;
  readonly b0: number;
  readonly R: number;
}

/** A draught with Coulomb friction, as the spread laws want it. */
export interface RubbedDraught extends Draught {
  readonly friction: number;
}

/** A pass as the force laws want it; b1 is the width after, m. */
export interface FlatPass extends RubbedDraught {
  readonly b1: number;
  /** Mean uniaxial flow stress over the pass, Pa. */
  readonly flowStress: number;
}

/** A pass with what Ekelund's own resistance asks for: °C, m/s at the roll surface, mass %. */
export interface HotPass extends FlatPass {
  readonly temperature: number;
  readonly speed: number;
  readonly composition: Composition;
}
