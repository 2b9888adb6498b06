import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import type { BedSteel } from './bed-steel.ts';
import { camber, type FibreHistory, heldBar } from './camber.ts';
import { bimetalCurvature } from './closed-forms.ts';
import { fibres, layeredRectangle } from './fibres.ts';

/** Two metals by the share of pearlite: 10e-6 /K where it is 0, 16e-6 where it is 1. Nothing yields. */
const elastic: BedSteel = {
  name: 'two elastic metals',
  source: 'ideal',
  status: 'computed from exact theory',
  validity: {},
  modulus: () => 200e9,
  yieldStress: () => 1e15,
  hardening: () => 1e9,
  freeStrain: (T, X) => (10e-6 + 6e-6 * X) * (T - 20),
  transformationPlasticity: 0,
  forgotten: 0,
};

const history = (states: readonly (readonly number[])[], share: readonly number[]): FibreHistory => ({
  times: states.map((_, i) => i),
  temperature: states,
  pearlite: states.map(() => share),
});

test('a bimetal of 2 mm on 3 mm bends as Timoshenko says', () => {
  // Timoshenko 1925; 0.3 % for 100 layers.
  const section = layeredRectangle(0.02, 0.005, 100);
  const upper = Array.from(section.y, (y) => (y > 0.0005 ? 1 : 0));
  const cold = upper.map(() => 20);
  const hot = upper.map(() => 120);
  const { height, plastic } = must(camber(section, elastic, history([cold, hot], upper)));
  expect(Math.abs(height[1] / bimetalCurvature(6e-6 * 100, 0.005, 2 / 3, 1) - 1)).toBeLessThan(3e-3);
  expect(plastic).toBe(0);
});

test('a temperature that falls straight over the height bends without stress, exactly by αΔT/H', () => {
  const section = layeredRectangle(0.07, 0.172, 50);
  const tilted = Array.from(section.y, (y) => 300 + (20 * y) / 0.172);
  const even = tilted.map(() => 300);
  const result = must(
    camber(
      section,
      elastic,
      history(
        [even, tilted],
        even.map(() => 0),
      ),
    ),
  );
  expect(Math.abs(result.height[1] / ((10e-6 * 20) / 0.172) - 1)).toBeLessThan(1e-12);
  expect(Math.max(...result.stress.map(Math.abs))).toBeLessThan(1);
});

test('an elastic bar heated and cooled unevenly is straight again to 1e-9', () => {
  const section = crooked();
  const even = Array.from(section.y, () => 20);
  const uneven = (k: number) =>
    Array.from(section.y, (y, i) => 20 + 400 * k + 90 * Math.sin(i + k) + 50 * k * y);
  const states = [even, uneven(1), uneven(3), uneven(2), even];
  const result = must(
    camber(
      section,
      elastic,
      history(
        states,
        even.map(() => 0),
      ),
    ),
  );
  expect(Math.abs(result.height[2])).toBeGreaterThan(1e-5);
  expect(Math.abs(result.released[0])).toBeLessThan(1e-9);
  expect(Math.abs(result.released[1])).toBeLessThan(1e-9);
});

test('the moment of last straightness decides: hot head while straight, hollow head when cold', () => {
  const section = layeredRectangle(0.07, 0.172, 50);
  const tilted = Array.from(section.y, (y) => 800 + (40 * y) / 0.172);
  const cold = tilted.map(() => 20);
  const result = must(
    camber(
      section,
      elastic,
      history(
        [tilted, cold],
        cold.map(() => 0),
      ),
    ),
  );
  expect(result.released[0]).toBeCloseTo((-10e-6 * 40) / 0.172, 12);
});

test('a mirrored section bends to the mirrored side', () => {
  const section = crooked();
  const mirrored = fibres(
    Array.from(section.x, (x) => -x),
    section.y,
    section.area,
  );
  const yielding = { ...elastic, yieldStress: () => 60e6 };
  const even = Array.from(section.y, () => 20);
  const uneven = even.map((_, i) => 300 + 200 * Math.sin(3 * i));
  const run = (each: typeof section) =>
    must(
      camber(
        each,
        yielding,
        history(
          [even, uneven, even],
          even.map(() => 0),
        ),
      ),
    );
  const [one, other] = [run(section), run(mirrored)];
  expect(one.plastic).toBeGreaterThan(1e-4);
  expect(Math.abs(one.released[0])).toBeGreaterThan(1e-5);
  expect(Math.abs(other.released[0] - one.released[0])).toBeLessThan(1e-11);
  expect(Math.abs(other.released[1] + one.released[1])).toBeLessThan(1e-11);
});

test('a bar held straight that yields keeps a bend when it is let go, and holds no force or moment', () => {
  const section = layeredRectangle(0.07, 0.172, 50);
  const yielding = { ...elastic, yieldStress: () => 60e6 };
  const even = Array.from(section.y, () => 500);
  const tilted = Array.from(section.y, (y) => 500 + (300 * y) / 0.172);
  const result = must(
    camber(
      section,
      yielding,
      history(
        [even, tilted, even],
        even.map(() => 0),
      ),
      heldBar,
    ),
  );
  expect(result.height[2]).toBe(0);
  expect(result.largestMoment).toBeGreaterThan(0);
  expect(Math.abs(result.released[0])).toBeGreaterThan(1e-5);
  const force = result.stress.reduce((sum, each, i) => sum + each * section.area[i], 0);
  const moment = result.stress.reduce((sum, each, i) => sum + each * section.area[i] * section.y[i], 0);
  expect(Math.abs(force)).toBeLessThan(1e-3);
  expect(Math.abs(moment)).toBeLessThan(1e-3);
});

test('pre-camber adds to the camber of a free bar without change', () => {
  const section = crooked();
  const yielding = { ...elastic, yieldStress: () => 60e6 };
  const even = Array.from(section.y, () => 500);
  const uneven = even.map((_, i) => 400 + 200 * Math.sin(2 * i));
  const run = (pre: readonly [number, number]) =>
    must(
      camber(
        section,
        yielding,
        history(
          [even, uneven, even],
          even.map(() => 0),
        ),
        { height: 0, side: 0 },
        pre,
      ),
    );
  const [plain, bent] = [run([0, 0]), run([1.5e-3, 0])];
  expect(bent.released[0] - plain.released[0]).toBeCloseTo(1.5e-3, 10);
});

test('steel that transforms under load takes a strain of K σ and keeps it', () => {
  // One chain of uniaxial theory: ε_tp = K σ for a complete transformation at constant stress.
  const K = 7e-11;
  const turning = { ...elastic, freeStrain: (_: number, X: number) => 3e-3 * X, transformationPlasticity: K };
  const section = layeredRectangle(0.02, 0.1, 2);
  // The outer pair is done before; the two layers load each other as the second one grows: solved by hand.
  const n = section.area.length;
  const times = Array.from({ length: 401 }, (_, k) => k);
  const cold = Array.from({ length: n }, () => 600);
  const pearlite = times.map((k) => Array.from(section.y, (y) => (y > 0 ? k / 400 : 0)));
  const result = must(
    camber(section, turning, { times, temperature: times.map(() => cold), pearlite }, heldBar),
  );
  // Held straight, equal layers: stress s = −E/2·(3e-3 X + ε_tp), dε_tp = K s dΦ, Φ = X(2 − X); integrated by 1e5 steps.
  let [strain, stress] = [0, 0];
  for (let k = 1; k <= 1e5; k++) {
    const [X, before] = [k / 1e5, (k - 1) / 1e5];
    const grown = X * (2 - X) - before * (2 - before);
    stress = (-(200e9 / 2) * (3e-3 * X + strain)) / (1 + (200e9 / 2) * K * grown);
    strain += K * stress * grown;
  }
  expect(Math.abs(strain)).toBeGreaterThan(1e-4);
  expect(result.strain[400]).toBeCloseTo((3e-3 + strain) / 2, 5);
});

function crooked() {
  const n = 60;
  const row = (f: (i: number) => number) => Array.from({ length: n }, (_, i) => f(i));
  return fibres(
    row((i) => 0.05 * Math.cos(1.7 * i)),
    row((i) => 0.09 * Math.sin(2.3 * i) + 0.02 * Math.cos(i)),
    row((i) => 1e-4 * (1.2 + Math.sin(i))),
  );
}
