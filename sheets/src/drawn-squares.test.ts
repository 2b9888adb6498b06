import { must } from '@bloomrail/engine/outcome/result';
import { squareGrid } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/square-grid';
import type { DrawnSquares } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/squares';
import { rectangle } from '@bloomrail/engine/section/rectangle';
import { expect, test } from 'vitest';
import type { Item, Spot } from './drawing.ts';
import { drawnSquaresDrawing } from './drawn-squares.ts';
import { gridItems } from './drawn-squares-grid.ts';
import { hatched, shades } from './drawn-squares-hatching.ts';
import { shadeOf, tintScale } from './drawn-squares-tint.ts';
import { svgOf } from './svg.ts';

const before = must(squareGrid(rectangle(0.04, 0.04, 0), 0.01));

const mapped = (map: (x: number, y: number) => [number, number]): DrawnSquares => ({
  ...before,
  points: before.points.flatMap((_, at) =>
    at % 2 === 0 ? map(before.points[at], before.points[at + 1]) : [],
  ),
});

const box: Spot[] = [
  { x: 10, y: 10 },
  { x: 30, y: 10 },
  { x: 30, y: 30 },
  { x: 10, y: 30 },
];

const inked = (items: readonly Item[]): number =>
  items.reduce(
    (sum, item) =>
      sum + (item.kind === 'line' ? Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y) : 0),
    0,
  );

test('each shade takes more ink than the one before, from none to 0.7 mm of line per mm crossed twice', () => {
  const ink = Array.from({ length: shades }, (_, shade) => inked(hatched(box, shade)));
  expect(ink[0]).toBe(0);
  for (let shade = 1; shade < shades; shade++) expect(ink[shade]).toBeGreaterThan(1.3 * ink[shade - 1]);
  // Two families of parallels 0.7 mm apart over 400 mm².
  expect(ink[shades - 1] / ((2 * 400) / 0.7)).toBeCloseTo(1, 2);
});

test('hatching stays inside, in a ring with a bay too, and is one with the neighbour’s', () => {
  const bay: Spot[] = [...box.slice(0, 3), { x: 20, y: 14 }, { x: 10, y: 30 }];
  const [whole, left, right] = [box, halfBox(10), halfBox(20)].map((ring) => inked(hatched(ring, 3)));
  expect(left + right).toBeCloseTo(whole, 9);
  for (const item of hatched(bay, 5)) {
    if (item.kind !== 'line') continue;
    const [x, y] = [(item.from.x + item.to.x) / 2, (item.from.y + item.to.y) / 2];
    expect(y).toBeLessThan(14 + 1.6 * Math.abs(x - 20) + 1e-9);
  }
});

const halfBox = (x: number): Spot[] => [
  { x, y: 10 },
  { x: x + 10, y: 10 },
  { x: x + 10, y: 30 },
  { x, y: 30 },
];

test('the scale has round steps, takes in every value and shows none below what the model can tell', () => {
  expect(tintScale([0, 3.2, 17.9], 1)).toEqual({ bounds: [0, 5, 10, 15, 20], decimals: 0 });
  expect(tintScale([1.2515, 1.2605], 0.01).bounds.map((bound) => bound.toFixed(2))).toEqual([
    '1.25',
    '1.26',
    '1.27',
  ]);
  expect(tintScale([0.3, 0.7], 1)).toEqual({ bounds: [0, 1], decimals: 0 });
  expect(tintScale([1.03, 1.04], 0.02).bounds.map((bound) => bound.toFixed(2))).toEqual(['1.02', '1.04']);
  expect(tintScale([], 1).bounds).toEqual([0, 1]);
  for (const values of [
    [0, 5],
    [0, 6],
    [2, 61],
    [7, 7],
    [0.999, 88],
    [30, 29_000],
  ]) {
    const scale = tintScale(values, 1);
    const [low, high] = [scale.bounds[0], scale.bounds[scale.bounds.length - 1]];
    expect(low).toBeLessThanOrEqual(Math.min(...values));
    expect(high).toBeGreaterThanOrEqual(Math.max(...values));
    expect(scale.bounds.length).toBeLessThanOrEqual(shades + 1);
    for (const value of values) expect(shadeOf(value, scale)).toBeLessThan(shades);
  }
  expect([0, 4.9, 5, 17.9].map((value) => shadeOf(value, tintScale([0, 17.9], 1)))).toEqual([0, 0, 1, 3]);
});

test('shared sides are drawn once, straight ones in one line, the skin wider', () => {
  const items = gridItems(before, (x, y) => ({ x, y }), 'thin');
  expect(items).toHaveLength(40);
  expect(items.filter((item) => item.kind === 'line' && item.stroke === 'outline')).toHaveLength(16);
  expect(inked(items)).toBeCloseTo(10 * 40, 9);
});

test('a sheared section is hatched by its angle, dimensioned, to one scale, and described with its finding', () => {
  const after = mapped((x, y) => [x + 0.2 * y, 0.8 * y]);
  const drawing = drawnSquaresDrawing({ name: 'Block <1>', before, after });
  // tan γ = 0.2/0.8 turns the upright lines.
  expect(drawing.description).toBe(
    'Block <1>: squares of 10 mm on a section of 40.0 × 40.0 mm, 48.0 × 32.0 mm when rolled; right angle off by 14.04 to 14.04°.',
  );
  expect(drawing.title).toBe('Block <1>, drawn squares 2 : 1');
  const svg = svgOf(drawing);
  for (const words of [
    '>48.0<',
    '>32.0<',
    '>before<',
    '>after<',
    'no permission',
    'Block &lt;1&gt;',
    '>14°<',
  ])
    expect(svg).toContain(words);
});

test('over each other: what was drawn is dashed, and dimensions stay clear of it', () => {
  const after = mapped((x, y) => [1.1 * x, 0.7 * y]);
  const { items } = drawnSquaresDrawing({ name: 'Block', before, after, tint: 'along', layout: 'over' });
  const dashed = items.filter((item) => item.kind === 'line' && item.stroke === 'dashed');
  expect(dashed).toHaveLength(40);
  const lowest = Math.min(
    ...dashed.map((item) => (item.kind === 'line' ? Math.min(item.from.y, item.to.y) : 0)),
  );
  const width = items.find((item) => item.kind === 'text' && item.text === '44.0');
  expect(width?.kind === 'text' ? width.at.y : lowest).toBeLessThan(lowest);
});

test('a tall section takes a smaller scale than a wide one of the same size', () => {
  const wide = drawnSquaresDrawing({
    name: 'Block',
    before,
    after: mapped((x, y) => [1.8 * x, y]),
    layout: 'over',
  });
  const tall = drawnSquaresDrawing({
    name: 'Block',
    before,
    after: mapped((x, y) => [x, 2.4 * y]),
    layout: 'over',
  });
  expect([wide.title, tall.title]).toEqual(['Block, drawn squares 2 : 1', 'Block, drawn squares 1 : 1']);
});
