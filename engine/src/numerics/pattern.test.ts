import fc from 'fast-check';
import { expect, test } from 'vitest';
import { patternOfElements } from './pattern.ts';

const meshes = fc.integer({ min: 3, max: 9 }).chain((nodes) =>
  fc.record({
    nodes: fc.constant(nodes),
    dofs: fc.integer({ min: 1, max: 3 }),
    triangles: fc.array(
      fc.uniqueArray(fc.integer({ min: 0, max: nodes - 1 }), { minLength: 3, maxLength: 3 }),
      { maxLength: 8 },
    ),
  }),
);

test('assembling through the slots gives the matrix that assembling into a full square gives', () => {
  fc.assert(
    fc.property(meshes, ({ nodes, dofs, triangles }) => {
      const size = nodes * dofs;
      const k = 3 * dofs;
      const { pattern, slot } = patternOfElements(size, triangles.flat(), 3, dofs);
      const sparse = new Float64Array(pattern.row.length);
      const full = new Float64Array(size * size);
      triangles.forEach((corners, e) => {
        for (let i = 0; i < k; i++) {
          for (let j = 0; j < k; j++) {
            const value = 1 + Math.min(i, j) * 10 + Math.max(i, j) + 1000 * e;
            if (j <= i) sparse[slot[e * k * k + i * k + j]] += value;
            const row = corners[Math.floor(i / dofs)] * dofs + (i % dofs);
            const column = corners[Math.floor(j / dofs)] * dofs + (j % dofs);
            full[row * size + column] += value;
          }
        }
      });
      for (let j = 0; j < size; j++) {
        const below = full.slice();
        for (let at = pattern.columnStart[j]; at < pattern.columnStart[j + 1]; at++) {
          expect(sparse[at]).toBe(below[pattern.row[at] * size + j]);
          full[pattern.row[at] * size + j] = 0;
        }
        for (let i = j; i < size; i++) expect(full[i * size + j]).toBe(0);
      }
    }),
  );
});

test('each column starts with its diagonal, rows ascend, and (i, j) shares its slot with (j, i)', () => {
  fc.assert(
    fc.property(meshes, ({ nodes, dofs, triangles }) => {
      const k = 3 * dofs;
      const { pattern, slot } = patternOfElements(nodes * dofs, triangles.flat(), 3, dofs);
      for (let j = 0; j < pattern.size; j++) {
        expect(pattern.row[pattern.columnStart[j]]).toBe(j);
        for (let at = pattern.columnStart[j] + 1; at < pattern.columnStart[j + 1]; at++) {
          expect(pattern.row[at]).toBeGreaterThan(pattern.row[at - 1]);
        }
      }
      for (let at = 0; at < slot.length; at++) {
        const [e, i, j] = [Math.floor(at / k / k), Math.floor(at / k) % k, at % k];
        expect(slot[at]).toBe(slot[e * k * k + j * k + i]);
      }
    }),
  );
});

test('a node number outside the mesh is refused', () => {
  expect(() => patternOfElements(3, [0, 1, 3], 3)).toThrow('node 3 outside 0 … 2');
  expect(() => patternOfElements(3, [0, 1, 2], 3, 3)).toThrow('node 1 outside 0 … 0');
});
