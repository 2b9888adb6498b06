import { expect, test } from 'vitest';
import { acrossEdges } from './across.ts';
import { squareMesh } from './affine-flow.fixture.ts';
import { atSeat, elementAt, emptySeat, type Standing, sitInside, sitOnSkin } from './seat.ts';

const mesh = squareMesh(0.06, 3);
const standing: Standing = { mesh, across: acrossEdges(mesh.quads), xy: mesh.xy };

test('across each edge lies its neighbour: the middle of nine has four, a corner two', () => {
  expect([...standing.across].slice(16, 20)).toEqual([1, 5, 7, 3]);
  expect([...standing.across].slice(0, 4)).toEqual([-1, 1, 3, -1]);
});

test('a point is found from wherever the search begins, and nowhere outside', () => {
  for (let near = 0; near < 9; near++) {
    expect(elementAt(standing, 0.001, 0.002, near)).toBe(4);
    expect(elementAt(standing, -0.021, 0.025, near)).toBe(6);
    expect(elementAt(standing, 0.0301, 0, near)).toBe(-1);
  }
});

test('the seat of a point stands for the point, in a slanting element too', () => {
  const xy = Float64Array.from(mesh.xy);
  xy.set([-0.006, -0.012], 2 * 5);
  const seat = emptySeat();
  sitInside({ ...standing, xy }, 4, 0.002, 0.003, seat);
  expect(Math.hypot(atSeat(seat, xy, 0) - 0.002, atSeat(seat, xy, 1) - 0.003)).toBeLessThan(1e-15);
  expect(Math.abs(seat.weights.reduce((sum, weight) => sum + weight, 0) - 1)).toBeLessThan(1e-15);
});

test('a point outside sits on the skin nearest to it, beyond a corner on the corner', () => {
  const seat = emptySeat();
  const placed = (x: number, y: number) => {
    sitOnSkin(standing, x, y, seat);
    return [atSeat(seat, mesh.xy, 0), atSeat(seat, mesh.xy, 1)];
  };
  expect(placed(0.04, 0.013)[0]).toBeCloseTo(0.03, 15);
  expect(placed(0.04, 0.013)[1]).toBeCloseTo(0.013, 15);
  expect(placed(0.04, 0.05)).toEqual([0.03, 0.03]);
});
