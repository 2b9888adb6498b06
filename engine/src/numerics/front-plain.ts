import { eliminate, type FrontArrays, strideOf } from './front.ts';
import { type FrontKernel, type KernelSize, togetherAtMost } from './front-kernel.ts';
import { backward, forward, type Substitution } from './substitution.ts';

/** The kernel in TypeScript: the reference, and what a host without WebAssembly gets. */
export function plainKernel(size: KernelSize): FrontKernel {
  const { unknown, panelStart, largestPanel, workspaceSize, rowInParent, border } = size;
  const arrays = {
    lower: new Float64Array(panelStart[panelStart.length - 1]),
    unscaled: new Float64Array(largestPanel),
    updates: new Float64Array(workspaceSize),
  };
  const rights = new Float64Array(togetherAtMost * unknown.length);
  const { lower } = arrays;
  const step = (
    panel: number,
    order: number,
    pivots: number,
    first: number,
    from: number,
    group: number,
  ): Substitution => {
    return { lower, panel, order, pivots, x: rights, base: group * unknown.length, first, border, from };
  };
  return {
    name: 'plain',
    arrays,
    rights,
    lanes: 1,
    eliminate: (panel, order, pivots, update) => eliminate(arrays, panel, order, pivots, update),
    addUpdate: (from, left, rows, panel, order, pivots, update) =>
      addUpdate(arrays, rowInParent, from, left, rows, panel, order, pivots, update),
    forward: (panel, order, pivots, first, from, group) =>
      forward(step(panel, order, pivots, first, from, group)),
    backward: (panel, order, pivots, first, from, group) =>
      backward(step(panel, order, pivots, first, from, group)),
  };
}

function addUpdate(
  { lower, updates }: FrontArrays,
  rowInParent: Int32Array,
  from: number,
  left: number,
  rows: number,
  panel: number,
  order: number,
  pivots: number,
  update: number,
): void {
  const [stride, ownStride, parentStride] = [strideOf(left), strideOf(order), strideOf(order - pivots)];
  for (let j = 0; j < left; j++) {
    const row = rowInParent[rows + j];
    const inPanel = row < pivots;
    const target = inPanel ? lower : updates;
    const to = inPanel ? panel + row * ownStride : update + (row - pivots) * parentStride - pivots;
    addColumn(updates, from + j * stride, target, to, rowInParent, rows, j, left);
  }
}

function addColumn(
  source: Float64Array,
  from: number,
  target: Float64Array,
  to: number,
  rowInParent: Int32Array,
  rows: number,
  first: number,
  end: number,
): void {
  for (let i = first; i < end; i++) target[to + rowInParent[rows + i]] += source[from + i];
}
