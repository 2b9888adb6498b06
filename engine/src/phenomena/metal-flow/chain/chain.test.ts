import { expect, test } from 'vitest';
import { solveDense } from '../../../numerics/dense.ts';
import { seededRandom } from '../../../numerics/random.ts';
import { must } from '../../../outcome/result.ts';
import { chainFor, chainStep } from './chain.ts';
import type { ChainLink } from './link.ts';
import { linkLayout } from './link-layout.ts';

const layout = linkLayout(2);
const { block, size } = layout;
const slices = 5;
const random = seededRandom(3);

/** A link with a curvature as slices have it: positive definite. */
function drawnLink(): ChainLink {
  const root = Float64Array.from({ length: size * size }, () => random() - 0.5);
  const curvature = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      for (let k = 0; k < size; k++) curvature[i * size + j] += root[i * size + k] * root[j * size + k];
      if (i === j) curvature[i * size + j] += 0.1;
    }
  }
  const slope = Float64Array.from({ length: size }, () => random() - 0.5);
  return { layout, length: 0.5 + random(), shapes: new Float64Array(0), before: undefined, slope, curvature };
}

test('its step is the one of the whole sum, the last warping held and the first link without a slice before it', () => {
  const links = Array.from({ length: slices }, drawnLink);
  const n = slices * block;
  const isHeld = (i: number) => i >= n - block + layout.shapes && i < n - 1;
  const [matrix, right] = [new Float64Array(n * n), new Float64Array(n)];
  links.forEach(({ length, slope, curvature }, s) => {
    for (let i = 0; i < size; i++) {
      const row = (s - 1) * block + i;
      if (row < 0 || isHeld(row)) continue;
      right[row] -= length * slope[i];
      for (let j = 0; j < size; j++) {
        const column = (s - 1) * block + j;
        if (column >= 0 && !isHeld(column)) matrix[row * n + column] += length * curvature[i * size + j];
      }
    }
  });
  for (let i = 0; i < n; i++) if (isHeld(i)) matrix[i * n + i] = 1;
  const wanted = must(solveDense(matrix, right));
  const step = chainStep(chainFor(layout, slices), links);
  wanted.forEach((value, i) => {
    expect(step?.changes[i]).toBeCloseTo(value, 5);
  });
  expect(step?.warping.length).toBe(slices * layout.modes);
});
