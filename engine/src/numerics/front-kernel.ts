import type { FrontArrays } from './front.ts';
import type { Symbolic } from './symbolic.ts';

/** The arithmetic of fronts on arrays of its own. Whatever the kernel, every entry has the same bits. */
export interface FrontKernel {
  readonly name: 'simd' | 'plain';
  readonly arrays: FrontArrays;
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
}

/** What a kernel needs to know of the matrix. */
export type KernelSize = Pick<Symbolic, 'panelStart' | 'largestPanel' | 'workspaceSize' | 'rowInParent'>;
