import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { circle, rectangle } from '../../../section/rectangle.ts';
import { lyingRail } from '../meshing/mesh-laws.fixture.ts';
import { squareGrid } from './square-grid.ts';
import type { DrawnSquares } from './squares.ts';
import { ringArea } from './stretch.ts';

const drawnArea = ({ cells, points }: DrawnSquares): number =>
  cells.reduce((sum, { ring }) => sum + ringArea(ring, points), 0);

/** Chords of a sixteenth of a half turn leave out up to this share of the sectors under the arcs: angle squared over 6. */
const lost = (Math.PI / 16) ** 2 / 6;

const sections: readonly (readonly [string, Outline, number, number])[] = [
  ['a sharp square', rectangle(0.05, 0.05, 0), 0.01, 1e-12],
  [
    'a bloom whose sides lie on lines',
    rectangle(0.24, 0.2, 0.02),
    0.02,
    (lost * Math.PI * 0.02 ** 2) / 0.0476,
  ],
  ['a round', circle(0.04), 0.007, lost],
  ['a rail', lyingRail('60E1'), 0.008, 1e-3],
];
for (const [what, outline, side, within] of sections) {
  test(`squares on ${what} fill it and each other's gaps, whole ones exactly square`, () => {
    const squares = must(squareGrid(outline, side));
    const { area } = sectionProperties(outline);
    expect(Math.abs(drawnArea(squares) / area - 1)).toBeLessThan(within);
    const whole = squares.cells.filter(({ isWhole }) => isWhole);
    expect(whole.length).toBeGreaterThan(10);
    for (const { ring, corners } of whole) {
      expect(Math.abs(ringArea(ring, squares.points) / side ** 2 - 1)).toBeLessThan(1e-9);
      expect(corners).toHaveLength(4);
      expect(ring.length).toBeGreaterThanOrEqual(16);
    }
  });
}

test('lines lie at multiples of the side from the middle, or from where they are wanted', () => {
  const from = (through: { x?: number; y?: number }) => {
    const { cells, points } = must(squareGrid(rectangle(0.05, 0.05, 0), 0.02, through));
    const cell = cells.find(({ column, row }) => column === 0 && row === 0);
    return cell?.corners.map((p) =>
      [points[2 * p], points[2 * p + 1]].map((v) => Math.round(v * 1e6) / 1e3 + 0),
    );
  };
  expect(from({})?.sort()).toEqual([
    [0, 0],
    [0, 20],
    [20, 0],
    [20, 20],
  ]);
  expect(from({ x: 0.005 })?.sort()).toEqual([
    [25, 0],
    [25, 20],
    [5, 0],
    [5, 20],
  ]);
});

test('cells meet in the same points: every inner edge is walked once in each direction', () => {
  const { cells, skin } = must(squareGrid(lyingRail('49E1'), 0.01));
  const walked = new Set<string>();
  const onSkin = new Set(skin);
  for (const { ring } of cells)
    for (const [i, a] of ring.entries()) walked.add(`${a} ${ring[(i + 1) % ring.length]}`);
  for (const edge of walked) {
    const [a, b] = edge.split(' ');
    if (!walked.has(`${b} ${a}`)) expect(onSkin.has(Number(a)) && onSkin.has(Number(b))).toBe(true);
  }
});

test('skin points are on the skin, all others inside', () => {
  const { points, skin } = must(squareGrid(circle(0.04), 0.01));
  const onSkin = new Set(skin);
  expect(skin.length).toBeGreaterThan(20);
  for (let i = 0; 2 * i < points.length; i++) {
    const radius = Math.hypot(points[2 * i], points[2 * i + 1]);
    if (onSkin.has(i)) expect(Math.abs(radius - 0.04)).toBeLessThan(1e-9);
    else expect(radius).toBeLessThan(0.04);
  }
});

test('squares that are no squares, or too many of them, are refused', () => {
  for (const side of [0, -0.01, Number.NaN, 1e-5]) {
    const made = squareGrid(rectangle(0.05, 0.05, 0), side);
    expect(made.ok).toBe(false);
  }
});

test('squares are plain data: a record gives them back unchanged', () => {
  const squares = must(squareGrid(rectangle(0.05, 0.04, 0.005), 0.01));
  expect(JSON.parse(JSON.stringify(squares))).toEqual(squares);
});
