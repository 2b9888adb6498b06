import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { austenite } from '../../steel/austenite.ts';
import { pearlite } from '../../steel/pearlite.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import { pearliteKinetics } from '../../steel/transformation.ts';
import { freeSurface } from '../radiation/free-surface.ts';
import { conduct, conductFor } from './conduct.ts';
import { conductor } from './conductor.ts';
import { coolingHistory } from './cooling-history.ts';
import { film } from './film.ts';
import { implicitStep } from './implicit-step.ts';
import { accept, march } from './march.ts';
import { plateMesh } from './plate-mesh.fixture.ts';
import { pointwise } from './surface.ts';

const change = { product: pearlite, kinetics: pearliteKinetics() };
const block = conductor(plateMesh(0.07, 0.06, 8, 7));
const massPerMetre = 7500 * 0.07 * 0.06;
const even = (T: number) => new Float64Array(block.areas.length).fill(T);
const inAir = { massPerMetre, law: austenite, change, surface: freeSurface(0.8, 25) };

function content(T: ArrayLike<number>, share: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < block.areas.length; i++) {
    const before = austenite.enthalpy(T[i]);
    sum +=
      (massPerMetre * block.areas[i] * (before + share[i] * (pearlite.enthalpy(T[i]) - before))) / block.area;
  }
  return sum;
}

test('a whole cooling from 950 to 80 °C keeps its books', () => {
  const start = even(950);
  let [given, last, powerBefore] = [0, 0, 0];
  const flux = new Float64Array(2 * block.skin.edges);
  const power = (T: ArrayLike<number>) => {
    const surface = Float64Array.from(block.skin.node, (node) => T[node]);
    let sum = 0;
    for (const channel of inAir.surface) {
      channel.heat(surface, 0, flux, new Float64Array(flux.length));
      flux.forEach((q, end) => {
        sum += (q * block.skin.length[end >> 1]) / 2;
      });
    }
    return sum;
  };
  const end = must(
    conduct(block, inAir, { temperature: start }, 9000, {
      // an independent account: the power at the surface by the trapezoid rule
      observe(time, T) {
        const now = power(T as ArrayLike<number>);
        given += ((now + powerBefore) / 2) * (time - last);
        [last, powerBefore] = [time, now];
      },
    }),
  );
  const lost = content(end.temperature, end.share) - content(start, new Float64Array(start.length));
  const booked = end.gained.radiation + end.gained.convection;
  expect(Math.abs(end.residual / lost)).toBeLessThan(1e-6);
  expect(Math.abs(booked / lost - 1)).toBeLessThan(1e-6);
  expect(Math.abs(given / lost - 1)).toBeLessThan(0.0025);
  expect(Math.min(...end.share)).toBeGreaterThan(0.999);
});

test('fixed steps keep the same books to round-off of the iteration', () => {
  const start = Float64Array.from(even(1150), (T, i) => T - 3 * i);
  const problem = { massPerMetre, law: austenite, surface: freeSurface(0.8, 25, 2) };
  const end = must(conductFor(block, problem, { temperature: start }, 8, 4));
  const none = new Float64Array(start.length);
  const lost = content(end.temperature, none) - content(start, none);
  expect(Math.abs((end.gained.radiation + end.gained.convection) / lost - 1)).toBeLessThan(1e-6);
});

/** Held or driven at a temperature by a film so good that heat of transformation does not show. */
function driven(path: (time: number) => number, duration: number, tolerance: number) {
  const thin = conductor(plateMesh(0.001, 0.001, 1, 1));
  const surface = [film('held', thin.skin, 1e7, path)];
  const temperature = new Float64Array(4).fill(path(0));
  return must(
    coolingHistory(
      thin,
      { massPerMetre: 7500e-6, law: austenite, change, surface },
      { temperature },
      duration,
      { tolerance, firstStep: 0.01 },
    ),
  );
}

test('held at one temperature, the share of pearlite is that of Avrami', () => {
  const { times, pearlite: shares } = driven(() => 620, 60, 0.1);
  const { rate, share } = change.kinetics;
  for (let k = 0; k < times.length; k++) {
    expect(Math.abs(shares[k][0] - share(rate(620) * times[k]))).toBeLessThan(1e-4);
  }
});

test('cooled at a constant rate, the share of pearlite is that of Scheil’s sum', () => {
  const path = (time: number) => 723 - 1 * time;
  const { times, pearlite: shares } = driven(path, 150, 0.7);
  const { rate, share } = change.kinetics;
  let [psi, t] = [0, 0];
  for (let k = 0; k < times.length; k++) {
    for (; t < times[k]; t += 0.01) psi += 0.01 * rate(path(t + 0.005));
    expect(Math.abs(shares[k][0] - share(psi))).toBeLessThan(0.01);
  }
});

test('the heat of transformation holds the cooling up and lifts the temperature again', () => {
  const { temperature, pearlite: shares } = must(
    coolingHistory(block, inAir, { temperature: even(950) }, 1500, {}),
  );
  const core = 4 * 9 + 4;
  const rises = temperature.map((T, k) => (k ? T[core] - temperature[k - 1][core] : 0));
  expect(Math.max(...rises)).toBeGreaterThan(0);
  expect(Math.max(...shares[shares.length - 1])).toBeGreaterThan(0.99);
});

test('a mirrored section cools to the mirrored field', () => {
  const lopsided = (sign: number) =>
    Float64Array.from(even(900), (T, i) => T + sign * 2000 * (block.mesh.xy[2 * i] - 0.035));
  const run = (sign: number) => must(conduct(block, inAir, { temperature: lopsided(sign) }, 300)).temperature;
  const [one, other] = [run(1), run(-1)];
  // the grid of even columns is its own mirror image, its diagonals too
  for (let j = 0; j <= 7; j++) {
    for (let i = 0; i <= 8; i++) expect(one[j * 9 + i]).toBeCloseTo(other[j * 9 + 8 - i], 6);
  }
});

const plain: ThermalLaw = {
  name: 'constant',
  source: 'test',
  status: 'computed from exact theory',
  validity: {},
  low: 0,
  high: 2000,
  enthalpy: (T) => 600 * (T - 20),
  heatCapacity: () => 600,
  conductivity: () => 30,
};

test('a tighter tolerance leaves a smaller error, as second-order steps should', () => {
  // error goes with the step squared and the controlled miss does too: a tenth of the tolerance, a tenth of the error
  const problem = { massPerMetre, law: plain, surface: freeSurface(0.8, 25) };
  const run = (tolerance: number) =>
    must(conduct(block, problem, { temperature: even(900) }, 600, { tolerance, firstStep: 0.01 }))
      .temperature[0];
  const exact = run(0.001);
  const [coarse, fine] = [Math.abs(run(1) - exact), Math.abs(run(0.1) - exact)];
  expect(coarse).toBeLessThan(1);
  expect(Math.log10(coarse / fine)).toBeGreaterThan(0.7);
});

/** Observed order from the differences between a run and those with half and a quarter of its step. */
function order(run: (steps: number) => number): number {
  const [a, b, c] = [run(40), run(80), run(160)];
  return Math.log2(Math.abs((a - b) / (b - c)));
}

test('equal steps of second-order differences are of second order, those of backward Euler of first', () => {
  const problem = { massPerMetre, law: plain, surface: freeSurface(0.8, 25) };
  const start = { temperature: even(900) };
  const second = (steps: number) => {
    const run = march(block, problem, start, 1e-8);
    for (let k = 0; k < steps; k++) {
      // the first step, of first order, in a hundred parts
      const parts = k ? 1 : 100;
      for (let part = 0; part < parts; part++) {
        const dt = 600 / steps / parts;
        expect(implicitStep(run, 0, dt, k > 1 ? 1 : k ? 100 : part ? 1 : 0).settled).toBe(true);
        accept(run);
      }
    }
    return run.temperature.now[0];
  };
  const first = (steps: number) => must(conductFor(block, problem, start, 600, steps)).temperature[0];
  expect(order(second)).toBeGreaterThan(1.8);
  expect(order(second)).toBeLessThan(2.2);
  expect(order(first)).toBeGreaterThan(0.9);
  expect(order(first)).toBeLessThan(1.1);
});

test('a surface law that gives no number is told as a failure, not as a field', () => {
  const broken = pointwise('broken', () => ({ flux: Number.NaN, slope: 0 }));
  const end = conduct(block, { massPerMetre, law: plain, surface: [broken] }, { temperature: even(900) }, 10);
  expect(end.ok).toBe(false);
  if (!end.ok) expect(end.failure.model).toBe('conduction');
});
