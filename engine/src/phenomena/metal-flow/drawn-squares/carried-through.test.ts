import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededRandom } from '../../../numerics/random.ts';
import { must } from '../../../outcome/result.ts';
import { circle, rectangle } from '../../../section/rectangle.ts';
import { quadMesh } from '../meshing/quads.ts';
import { outlineOf } from '../meshing/whole.ts';
import { loopArea, type QuadMesh } from '../quad-mesh.ts';
import { type AffineFlow, affineFlow, affineMap, squareMesh } from './affine-flow.fixture.ts';
import { carriedSquares, carriedThrough, drawnOn } from './carried-through.ts';
import { squareGrid } from './square-grid.ts';
import { ringArea } from './stretch.ts';

const squeeze: AffineFlow = { rates: { xx: 0.3, xy: 0, yx: 0, yy: -1 }, duration: 0.05, slices: 8 };
const skew: AffineFlow = { rates: { xx: 0.2, xy: 0.9, yx: -0.3, yy: -0.7 }, duration: 0.04, slices: 10 };

/** Farthest that any point is from where an even flow has to take it, m. */
function farthest(before: ArrayLike<number>, after: ArrayLike<number>, flow: AffineFlow): number {
  let most = 0;
  for (let i = 0; i < before.length; i += 2) {
    const [x, y] = affineMap(flow, before[i], before[i + 1]);
    most = Math.max(most, Math.hypot(after[i] - x, after[i + 1] - y));
  }
  return most;
}

const meshes: readonly (readonly [string, QuadMesh, AffineFlow])[] = [
  ['a whole square', squareMesh(0.05, 7), skew],
  ['a quarter of a square', squareMesh(0.05, 5, true), squeeze],
  ['a bloom of free mesh', must(quadMesh(rectangle(0.06, 0.04, 0.006), { size: 0.008, symmetry: {} })), skew],
  [
    'half of a bloom',
    must(quadMesh(rectangle(0.06, 0.04, 0.006), { size: 0.008, symmetry: { y: 0 } })),
    squeeze,
  ],
];
for (const [what, mesh, flow] of meshes) {
  for (const sliding of [undefined, 11] as const) {
    test(`an even flow takes all squares on ${what} where it must${sliding ? ', though nodes slide' : ''}`, () => {
      const solution = affineFlow(mesh, { ...flow, ...(sliding ? { sliding: seededRandom(sliding) } : {}) });
      const squares = must(squareGrid(outlineOf(mesh, mesh.xy), 0.007));
      const carried = carriedSquares(squares, solution);
      expect(farthest(squares.points, carried.points, flow)).toBeLessThan(1e-12);
    });
  }
}

test('points anywhere, in any even flow: exact, and mirrored points stay mirrored to the last digit', () => {
  const mesh = squareMesh(0.05, 5, true);
  const inside = fc.double({ min: -0.025, max: 0.025, noNaN: true });
  const rate = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(inside, inside, rate, rate, (x, y, xx, yy) => {
      const flow = { rates: { xx, xy: 0, yx: 0, yy }, duration: 0.05, slices: 6 };
      const [ax, ay, bx, by] = carriedThrough(affineFlow(mesh, flow), [x, y, -x, y]);
      expect(Math.hypot(ax - affineMap(flow, x, y)[0], ay - affineMap(flow, x, y)[1])).toBeLessThan(1.01e-12);
      expect([bx, by]).toEqual([0 - ax, ay]);
    }),
  );
});

test('points on a line of symmetry stay on it to the last digit', () => {
  const carried = carriedThrough(affineFlow(squareMesh(0.05, 5, true), squeeze), [0, 0.011, 0.013, 0, 0, 0]);
  expect([carried[0], carried[3], carried[4], carried[5]]).toEqual([0, 0, 0, 0]);
});

test('skin points end on the skin, points drawn off the section are brought to it', () => {
  const mesh = squareMesh(0.05, 6);
  const solution = affineFlow(mesh, squeeze);
  const [, y, x] = carriedThrough(solution, [0.004, 0.025 + 1e-6, 0.03, 0.002], [0]);
  const [right, top] = affineMap(squeeze, 0.025, 0.025);
  expect(Math.abs(y - top)).toBeLessThan(1e-15);
  expect(Math.abs(x - right)).toBeLessThan(1e-15);
});

/** A round that turns in itself: nodes stay where they are while the steel runs past them through all elements. */
function turningRound(slices: number): number {
  const mesh = must(quadMesh(circle(0.05), { size: 0.01, symmetry: {} }));
  const still = affineFlow(mesh, { rates: { xx: 0, xy: 0, yx: 0, yy: 0 }, duration: 1 / slices, slices });
  const velocity = Float64Array.from(mesh.xy, (_, at) => (at % 2 === 0 ? -mesh.xy[at + 1] : mesh.xy[at - 1]));
  const solution = { ...still, steps: still.steps.map((step) => ({ ...step, velocity })) };
  const [x, y] = carriedThrough(solution, [0.03, 0]);
  return Math.hypot(x - 0.03 * Math.cos(1), y - 0.03 * Math.sin(1));
}

test('steel that runs past standing nodes is followed, with an error that halves with the slices', () => {
  const [coarse, fine] = [turningRound(40), turningRound(80)];
  expect(fine).toBeLessThan(3e-4);
  expect(coarse / fine).toBeGreaterThan(1.95);
  expect(coarse / fine).toBeLessThan(2.05);
});

test('squares drawn on a true outline start from the skin of the mesh, and fill it', () => {
  const outline = rectangle(0.06, 0.04, 0.01);
  const mesh = must(quadMesh(outline, { size: 0.012, symmetry: { x: 0, y: 0 } }));
  const squares = must(squareGrid(outline, 0.007));
  const settled = drawnOn(mesh, squares);
  expect(farthest(squares.points, settled.points, { ...squeeze, slices: 0 })).toBeLessThan(1e-3);
  const again = drawnOn(mesh, settled);
  expect(farthest(settled.points, again.points, { ...squeeze, slices: 0 })).toBeLessThan(1e-15);
  const filled = settled.cells.reduce((sum, { ring }) => sum + ringArea(ring, settled.points), 0);
  // Between two points of a ring the skin of the mesh may have a corner, which the ring cuts off.
  expect(Math.abs(filled / (4 * loopArea(mesh.loop, mesh.xy)) - 1)).toBeLessThan(2e-3);
});
