import { expect, test } from 'vitest';
import { strideOf } from './front.ts';
import { plainKernel } from './front-plain.ts';
import { simdKernel } from './front-simd/simd-kernel.ts';
import { seededRandom } from './random.ts';

/** All fronts that a blocking by four may treat differently, and a large one. */
const shapes = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 11].flatMap((pivots) =>
  [0, 1, 2, 3, 4, 5, 6, 7, 8, 23].map((left) => ({ pivots, left })),
);

/** A dominant lower triangle of that order, column after column without gaps between them. */
function triangle(order: number): Float64Array {
  const random = seededRandom(order);
  const a = Float64Array.from({ length: order * order }, () => random() - 0.5);
  for (let k = 0; k < order; k++) a[k * order + k] += k % 3 === 0 ? -order : order;
  return a;
}

/** The law itself, one entry after another. */
function eliminatedOneByOne(a: Float64Array, order: number, pivots: number): Float64Array {
  const out = a.slice();
  for (let k = 0; k < pivots; k++) {
    const x = out.slice(k * order, (k + 1) * order);
    const l = x.map((xi) => xi * (1 / x[k]));
    for (let j = k + 1; j < order; j++) {
      out[k * order + j] = l[j];
      for (let i = j; i < order; i++) out[j * order + i] -= x[i] * l[j];
    }
  }
  return out;
}

const kernels = { plain: plainKernel, simd: simdKernel };

test.each(['plain', 'simd'] as const)('the %s kernel eliminates to the bit as the law says', (name) => {
  for (const { pivots, left } of shapes) {
    const order = pivots + left;
    const a = triangle(order);
    const stride = strideOf(order);
    const kernel = kernels[name]({
      unknown: new Int32Array(0),
      border: new Int32Array(0),
      panelStart: Int32Array.of(0, pivots * stride),
      largestPanel: pivots * stride,
      workspaceSize: left * strideOf(left),
      rowInParent: new Int32Array(0),
    });
    if (!kernel) throw new Error('no WebAssembly here');
    const { lower, updates } = kernel.arrays;
    const place = (i: number, j: number) =>
      j < pivots
        ? ([lower, j * stride + i] as const)
        : ([updates, (j - pivots) * strideOf(left) + i - pivots] as const);
    const entries = Array.from({ length: order }, (_, j) =>
      Array.from({ length: order - j }, (_, i) => [i + j, j] as const),
    ).flat();
    for (const [i, j] of entries) {
      const [row, at] = place(i, j);
      row[at] = a[j * order + i];
    }
    kernel.eliminate(0, order, pivots, 0);
    const found = entries.map(([i, j]) => {
      const [row, at] = place(i, j);
      return row[at];
    });
    const expected = eliminatedOneByOne(a, order, pivots);
    expect(found).toEqual(entries.map(([i, j]) => expected[j * order + i]));
  }
});
