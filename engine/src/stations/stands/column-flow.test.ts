import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { rectangle } from '../../section/rectangle.ts';
import { flowBack } from './column-flow.ts';
import { upperHalf } from './half-section/half-section.ts';
import { areaBetween, areaUnder } from './half-section/measure.ts';
import { heightAt, piecesOf } from './half-section/pieces.ts';

const bloom = must(upperHalf(rectangle(0.28, 0.38, 0.025)));
const flat = must(upperHalf(rectangle(0.31, 0.29, 0.02)));
/** A dog bone: thick at both ends, thin in the middle. */
const bone = {
  vertices: [
    { x: -0.12, y: 0, bulge: 0 },
    { x: -0.12, y: 0.1, bulge: 0 },
    { x: -0.06, y: 0.09, bulge: 0 },
    { x: -0.02, y: 0.03, bulge: 0 },
    { x: 0.05, y: 0.03, bulge: 0 },
    { x: 0.07, y: 0.06, bulge: -0.2 },
    { x: 0.12, y: 0.05, bulge: 0 },
    { x: 0.12, y: 0, bulge: 0 },
  ],
};

test('a rectangle drawn flat comes from where the same share of its width was', () => {
  const sharp = (width: number, height: number) => must(upperHalf(rectangle(width, height, 0)));
  const back = flowBack(sharp(0.2, 0.2), sharp(0.22, 0.16));
  for (const [x, y] of [
    [0, 0],
    [0.05, 0.03],
    [-0.11, 0.08],
  ]) {
    const [wasX, wasY] = back(x, y);
    expect(wasX).toBeCloseTo(x / 1.1, 12);
    expect(wasY).toBeCloseTo(y / 0.8, 12);
  }
});

test('as much of the section lies left of a place as before, however metal flowed sideways', () => {
  for (const [entry, exit] of [
    [bloom, flat],
    [flat, bone],
  ]) {
    const back = flowBack(entry, exit);
    for (let x = -0.11; x < 0.115; x += 0.0137) {
      const [was] = back(x, 0);
      const share = areaBetween(exit, -1, x) / areaUnder(exit);
      expect(Math.abs(areaBetween(entry, -1, was) / areaUnder(entry) - share)).toBeLessThan(1e-3);
    }
  }
});

test('skin stays skin, the axis stays the axis, ends stay ends', () => {
  const back = flowBack(flat, bone);
  const [before, after] = [piecesOf(flat), piecesOf(bone)];
  for (const x of [-0.1, -0.03, 0, 0.06, 0.1]) {
    const [was, height] = back(x, heightAt(after, x));
    expect(height).toBeCloseTo(heightAt(before, was), 12);
    expect(back(x, 0)[1]).toBe(0);
  }
  expect(back(-0.12, 0)[0]).toBeCloseTo(-0.155, 9);
  expect(back(0.12, 0)[0]).toBeCloseTo(0.155, 9);
});

test('a side that hangs over is counted once, and every place still has an origin', () => {
  const overhung = {
    vertices: [
      [-0.1, 0],
      [-0.1, 0.06],
      [0.11, 0.06],
      [0.08, 0.03],
      [0.1, 0.02],
      [0.1, 0],
    ].map(([x, y]) => ({ x, y, bulge: 0 })),
  };
  const back = flowBack(flat, overhung);
  for (let x = -0.1; x <= 0.11; x += 0.01) {
    for (const value of back(x, 0.01)) expect(Number.isFinite(value)).toBe(true);
  }
});
