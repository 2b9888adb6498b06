import type { FrontArrays } from './front.ts';
import type { Symbolic } from './symbolic.ts';

/** The arithmetic of fronts on arrays of its own. Whatever the kernel, every entry has the same bits. */
export interface FrontKernel {
  readonly name: 'simd' | 'plain';
  readonly arrays: FrontArrays;
  /**
   * Up to `togetherAtMost` right-hand sides in the order of elimination, in groups of as many as the kernel has lanes:
   * place k of lane l in group g is rights[(g·unknowns + k)·lanes + l].
   */
  readonly rights: Float64Array;
  readonly lanes: number;
  /** See eliminate in front.ts. */
  eliminate(panel: number, order: number, pivots: number, update: number): void;
  /**
   * Adds a child's update, `left` rows and columns at `from`, to a front: its row i goes to row
   * rowInParent[rows + i] there.
   */
  addUpdate(
    from: number,
    left: number,
    rows: number,
    panel: number,
    order: number,
    pivots: number,
    update: number,
  ): void;
  /** See substitution.ts; `border` is where the front's places start in Symbolic.border, `group` names the rights. */
  forward(panel: number, order: number, pivots: number, first: number, border: number, group: number): void;
  backward(panel: number, order: number, pivots: number, first: number, border: number, group: number): void;
}

/** Right-hand sides that are solved together, at most; further ones wait. */
export const togetherAtMost = 4;

/** What a kernel needs to know of the matrix. */
export type KernelSize = Pick<
  Symbolic,
  'unknown' | 'panelStart' | 'largestPanel' | 'workspaceSize' | 'rowInParent' | 'border'
>;
