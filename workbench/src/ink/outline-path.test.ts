import { expect, test } from 'vitest';
import { boundsOf, outlinePath, placedAt } from './outline-path.ts';

const halfRound = {
  vertices: [
    { x: 0, y: -0.1, bulge: 1 },
    { x: 0, y: 0.1, bulge: 0 },
  ],
};
const page = placedAt(1000, [0, 0], [500, 500]);

test('a half round keeps its exact radius on the screen and bulges to the right', () => {
  expect(outlinePath(halfRound, page)).toBe('M500 600A100 100 0 0 0 500 400L500 600Z');
});

test('the box around a half round reaches to the crown of its arc', () => {
  const box = boundsOf(halfRound);
  expect(box.right).toBeCloseTo(0.1, 12);
  expect(box.left).toBe(0);
  expect([box.bottom, box.top]).toEqual([-0.1, 0.1]);
});
