import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { affineFlow, squareMesh } from './affine-flow.fixture.ts';
import { carriedSquares } from './carried-through.ts';
import { placedOutline, placedPoints } from './placing.ts';
import { squareGrid } from './square-grid.ts';
import type { DrawnSquares } from './squares.ts';
import { stretches } from './stretch.ts';

const drawn = must(squareGrid(rectangle(0.06, 0.04, 0.01), 0.009));

const mapped = (squares: DrawnSquares, map: (x: number, y: number) => [number, number]): DrawnSquares => ({
  ...squares,
  points: squares.points.flatMap((_, at) =>
    at % 2 === 0 ? map(squares.points[at], squares.points[at + 1]) : [],
  ),
});

test('an even stretch is found in every cell, part-cells at the skin included', () => {
  for (const cell of stretches(
    drawn,
    mapped(drawn, (x, y) => [1.1 * x, 0.7 * y]),
  )) {
    expect(cell.along).toBeCloseTo(1 / (1.1 * 0.7), 12);
    expect(cell.principal[0]).toBeCloseTo(1.1, 12);
    expect(cell.principal[1]).toBeCloseTo(0.7, 12);
    expect(cell.direction).toBeCloseTo(0, 12);
    expect(cell.strain.xx).toBeCloseTo((1.1 ** 2 - 1) / 2, 12);
    expect(cell.strain.yy).toBeCloseTo((0.7 ** 2 - 1) / 2, 12);
    expect(cell.shear).toBeCloseTo(0, 12);
  }
});

test('simple shear closes the right angle by its angle, and stretches as theory says', () => {
  const k = 0.4;
  // Principal stretches of simple shear: (√(4 + k²) ± k)/2.
  const greater = (Math.sqrt(4 + k * k) + k) / 2;
  for (const cell of stretches(
    drawn,
    mapped(drawn, (x, y) => [x + k * y, y]),
  )) {
    expect(cell.shear).toBeCloseTo(Math.atan(k), 12);
    expect(cell.principal[0]).toBeCloseTo(greater, 12);
    expect(cell.principal[1]).toBeCloseTo(1 / greater, 12);
    expect(cell.along).toBeCloseTo(1, 12);
    expect(Math.tan(cell.direction)).toBeCloseTo(1 / greater, 10);
  }
});

test('a bar turned over and moved between passes is not strained by it', () => {
  const handled = { ...drawn, points: placedPoints(drawn.points, { turn: Math.PI / 2, dx: 0.3, dy: -0.1 }) };
  for (const { principal, shear, along, strain } of stretches(drawn, handled)) {
    expect([...principal, along].every((stretch) => Math.abs(stretch - 1) < 1e-11)).toBe(true);
    expect(Math.abs(shear) + Math.abs(strain.xx) + Math.abs(strain.yy)).toBeLessThan(1e-11);
  }
});

test('quarter turns are exact, for outlines as for points', () => {
  expect(placedPoints([0.03, 0.01], { turn: Math.PI / 2, dx: 0, dy: 0 })).toEqual([-0.01, 0.03]);
  const [first] = placedOutline(rectangle(0.06, 0.04, 0), { turn: Math.PI / 2, dx: 0.1, dy: 0 }).vertices;
  expect(first).toEqual({ x: 0.02 + 0.1, y: -0.03, bulge: 0 });
});

test('two passes with the bar turned a quarter between them multiply', () => {
  const flow = { rates: { xx: 0.2, xy: 0, yx: 0, yy: -0.8 }, duration: 0.05, slices: 6 };
  const mesh = squareMesh(0.05, 6, true);
  const start = must(squareGrid(rectangle(0.05, 0.05, 0), 0.01));
  const once = carriedSquares(start, affineFlow(mesh, flow));
  const lying = { ...once, points: placedPoints(once.points, { turn: Math.PI / 2, dx: 0, dy: 0 }) };
  const [w, h] = [(1 + 0.01) ** 6, (1 - 0.04) ** 6];
  const second = { ...mesh, xy: Float64Array.from(mesh.xy, (v, at) => v * (at % 2 === 0 ? h : w)) };
  const twice = carriedSquares(lying, affineFlow(second, flow));
  for (const { principal, along } of stretches(start, twice)) {
    expect(principal[0]).toBeCloseTo(w * h, 12);
    expect(principal[1]).toBeCloseTo(w * h, 12);
    expect(along).toBeCloseTo(1 / (w * h) ** 2, 12);
  }
});

test('what became of the squares can be written into a record', () => {
  const made = stretches(drawn, drawn);
  expect(JSON.parse(JSON.stringify(made))).toEqual(made);
});

test('part-cells under a twentieth of a square are left out, and cells turned over', () => {
  const slivers = must(squareGrid(rectangle(0.0402, 0.04, 0), 0.01));
  expect(slivers.cells).toHaveLength(24);
  const made = stretches(slivers, slivers);
  expect(made).toHaveLength(16);
  expect(
    made.every(
      ({ cell, column, row }) => slivers.cells[cell].column === column && slivers.cells[cell].row === row,
    ),
  ).toBe(true);
  expect(
    stretches(
      drawn,
      mapped(drawn, (x, y) => [-x, y]),
    ),
  ).toEqual([]);
});
