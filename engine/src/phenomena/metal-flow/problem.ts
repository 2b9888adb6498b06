import type { Field } from '../../outcome/field.ts';
import type { QuadMesh } from './quad-mesh.ts';

/**
 * One pass as the flow model sees it. SI; °C for temperatures. The bar moves along +z of the mill ("along"); the exit
 * plane holds the roll axes, and distances count backwards from it, against the rolling direction.
 */
export interface FlowProblem {
  /** The entering section, or the part of it that symmetry leaves. */
  readonly mesh: QuadMesh;
  /** °C at each node. */
  readonly temperature: Field;
  /** Equivalent strain at each node that the steel still remembers on entering; 0 when recrystallised. */
  readonly strain: Field;
  readonly steel: FlowSteel;
  /** Two to four rolls; those that a line of symmetry mirrors are given once, on the computed side. */
  readonly rolls: readonly FlowRoll[];
  /** Pull on the bar, Pa, tension positive; 0 when absent. */
  readonly tension?: { readonly entry: number; readonly exit: number };
  /** Heat exchange in the bite; without it the pass is isothermal. */
  readonly heat?: BiteHeat;
  readonly wishes: FlowWishes;
}

/** A roll: a surface of revolution, its axis along x (top, bottom) or along y (left, right) in the exit plane. */
export interface FlowRoll {
  readonly name: string;
  readonly side: Side;
  /** y of the axis for top and bottom rolls, x for left and right ones, m. */
  readonly axis: number;
  /** Points x, y of its outline in the exit plane, m, in order along the roll; arcs flattened finely. */
  readonly profile: Field;
  /** rad/s of a driven roll; 'idle' turns with the bar. */
  readonly turning: number | 'idle';
  /** Coulomb's coefficient. */
  readonly friction: number;
  /** Most that friction can carry, as a share of the shear yield stress, 0 to 1; 1 when absent: sticking. */
  readonly shearLimit?: number;
}

export type Side = 'top' | 'bottom' | 'left' | 'right';

/** Flow stress as a power of the rate: σ = strength(ε, T) (rate/referenceRate)^exponent(T). */
export interface FlowSteel {
  readonly name: string;
  /** Pa, at the reference rate. */
  readonly strength: (strain: number, T: number) => number;
  /** 0 < m < 1. */
  readonly exponent: (T: number) => number;
  /** 1/s. */
  readonly referenceRate: number;
}

/** What the bite exchanges with the rolls and makes of work. */
export interface BiteHeat {
  /** J/m³K and W/mK at rolling temperature. */
  readonly heatCapacity: number;
  readonly conductivity: number;
  /** Bar to roll, W/m²K. */
  readonly contact: number;
  /** °C of the rolls' skin. */
  readonly rollTemperature: number;
}

export interface FlowWishes {
  /** Slices of the finest march; 20 is usual, 10 a preview. */
  readonly slices: number;
  /** Weight of the shear between slices, 0 to 1; 1 recommended, 0 only to compare with plane-section theories. */
  readonly shear?: number;
  /** Whether the field of axial shear lowers the flow stress (Orowan); true when absent. */
  readonly inhomogeneity?: boolean;
  /**
   * In how many modes the speed along the bar may differ over the section; 4 when absent, 8 in a section computed whole.
   * With 0 sections stay plane.
   */
  readonly warping?: number;
  /** Called after each march with the share done, 0 to 1; returning false breaks the computation off. */
  readonly progress?: (share: number) => boolean;
}
