import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import type { Path } from '../../../section/outline.ts';
import { cavityOf } from '../groove/cavity.ts';
import { BoxGroove } from '../groove/groove.ts';
import { rollsOf } from '../groove/rolls.ts';
import { misfits, wallsOf } from './groove-fit.ts';

/** Upright walls, so that every figure can be told by heart: 200 wide, 100 high, gap 20. */
const written = {
  ...{ family: 'box', name: 'box', gapMm: 20, heightMm: 100, bottomMm: 200, wall: 0 },
  ...{ bottomRadiusMm: 10, collarRadiusMm: 8 },
};
const cavityIn = (groove: BoxGroove) =>
  cavityOf(groove, must(rollsOf(groove, { gap: 0.02 }, { horizontal: 1, vertical: 0.7 })));
const cavity = cavityIn(BoxGroove.parse(written));

const half = (rows: readonly (readonly [x: number, y: number])[]): Path => ({
  vertices: rows.map(([x, y]) => ({ x: x / 1e3, y: y / 1e3, bulge: 0 })),
});
const bar = (left: number, right: number, high: number, fin = 0): Path =>
  half([
    [left - fin, 0],
    [left - fin, 9],
    [left, 9],
    [left, high],
    [right, high],
    [right, 0],
  ]);

test('a wall ends where it would meet the collar, whatever rounds the edge', () => {
  const sloping = BoxGroove.parse({ ...written, wall: 0.2 });
  const [left, right] = wallsOf(cavityIn(sloping));
  // 100 mm at the bottom and 0.2 of the 40 mm of depth below the collar
  expect(left).toBeCloseTo(-0.108, 9);
  expect(right).toBeCloseTo(0.108, 9);
});

test('metal between the collars is past the wall by its length, and counts on both halves', () => {
  const [fin] = misfits(bar(-100, 100, 50, 12), cavity, cavity.from, false).filter(
    ({ kind }) => kind === 'over',
  );
  expect(fin.x).toBeCloseTo(-0.1, 9);
  expect(fin.depth).toBeCloseTo(0.012, 9);
  expect(fin.area).toBeCloseTo(2 * 0.012 * 0.009, 9);
});

test('a low bar leaves a hollow under the roll, as deep as the nearest metal is far away', () => {
  const [hollow, ...others] = misfits(bar(-100, 100, 46, 0), cavity, cavity.from, false);
  expect(others).toEqual([]);
  expect(hollow.kind).toBe('under');
  expect(hollow.depth).toBeCloseTo(0.004, 4);
  // the rounded bottom corners take 2 × 2 × 0.0429 × (0.6 r)², about, off 2 × 200 × 4; midpoint rule
  expect(hollow.area * 1e6).toBeGreaterThan(1500);
  expect(hollow.area * 1e6).toBeLessThan(1600);
});

test('a bar that fills its groove fits everywhere, a tenth of a millimetre left out', () => {
  expect(misfits(bar(-100, 100, 49.9), cavity, cavity.from, false)).toEqual([]);
});
