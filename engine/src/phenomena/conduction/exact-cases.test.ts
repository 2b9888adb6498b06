import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import { type ConductOptions, conduct } from './conduct.ts';
import { conductor } from './conductor.ts';
import { film } from './film.ts';
import { plateMesh } from './plate-mesh.fixture.ts';
import { pointwise, type SurfaceHeat } from './surface.ts';

const constant = (k: number, c: number): ThermalLaw => ({
  name: 'constant',
  source: 'test',
  status: 'computed from exact theory',
  validity: {},
  low: -1e4,
  high: 1e4,
  enthalpy: (T) => c * (T - 20),
  heatCapacity: () => c,
  conductivity: () => k,
});
const right = (edge: number) => edge === 1;
const left = (edge: number) => edge === 3;
const held = 1e7; // W/m²K: a film so good that the surface is held at the temperature beyond it

interface Case {
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  readonly k: number;
  readonly c: number;
  readonly density: number;
  readonly start: number;
  readonly duration: number;
  readonly surface: (skin: ReturnType<typeof conductor>['skin']) => SurfaceHeat;
  readonly options?: ConductOptions;
}

function solved(cas: Case) {
  const plate = conductor(plateMesh(cas.width, cas.height, cas.columns, cas.rows));
  const problem = {
    massPerMetre: cas.density * cas.width * cas.height,
    law: constant(cas.k, cas.c),
    surface: cas.surface(plate.skin),
  };
  const temperature = new Float64Array(plate.areas.length).fill(cas.start);
  const end = must(conduct(plate, problem, { temperature }, cas.duration, cas.options));
  const at = (x: number, y: number) => {
    const i = Math.round((x / cas.width) * cas.columns);
    const j = Math.round((y / cas.height) * cas.rows);
    return end.temperature[j * (cas.columns + 1) + i];
  };
  return { ...end, at };
}

test('a bar that radiates from its end settles at 927.0 K', () => {
  // NAFEMS T2 (1986): 0.1 m, k 55.563, left 1000 K, right ε 0.98 to 300 K; target 927.0 K, converged 926.97 K
  const bar = solved({
    width: 0.1,
    height: 0.01,
    columns: 20,
    rows: 1,
    k: 55.563,
    c: 460,
    density: 7850,
    start: 1000 - 273.15,
    duration: 1e5,
    surface: (skin) => [
      film('held', skin, held, 1000 - 273.15, left),
      pointwise('radiation', (T, _, end) => {
        const on = right(skin.outlineEdge[end >> 1]) ? 0.98 * 5.670374419e-8 : 0;
        const K = T + 273.15;
        return { flux: on * (300 ** 4 - K ** 4), slope: -4 * on * K ** 3 };
      }),
    ],
    options: { largestStep: 1e4 },
  });
  expect(Math.abs(bar.at(0.1, 0) + 273.15 - 926.97)).toBeLessThan(0.05);
});

test('a bar whose end swings like a sine is at 36.60 °C in 80 mm after 32 s', () => {
  // NAFEMS T3 (1986): 0.1 m, k 35, c 440.5, ρ 7200, T(0) = 0, T(L) = 100 sin(πt/40); target 36.60, converged 36.603 °C
  const bar = solved({
    width: 0.1,
    height: 0.002,
    columns: 100,
    rows: 1,
    k: 35,
    c: 440.5,
    density: 7200,
    start: 0,
    duration: 32,
    surface: (skin) => [
      film('cold', skin, held, 0, left),
      film('swinging', skin, held, (t) => 100 * Math.sin((Math.PI * t) / 40), right),
    ],
    options: { firstStep: 0.01, tolerance: 0.01 },
  });
  expect(Math.abs(bar.at(0.08, 0) - 36.603)).toBeLessThan(0.05);
});

test('a plate cooled on two sides is at 18.3 °C where the benchmark asks', () => {
  // NAFEMS T4 (1986): 0.6 × 1.0 m, k 52, base 100 °C, right and top h 750 to 0 °C; target 18.3, converged 18.254 °C
  const plate = solved({
    width: 0.6,
    height: 1,
    columns: 36,
    rows: 60,
    k: 52,
    c: 460,
    density: 7850,
    start: 20,
    duration: 2e6,
    surface: (skin) => [
      film('base', skin, held, 100, (edge) => edge === 0),
      film('water', skin, 750, 0, (edge) => edge === 1 || edge === 2),
    ],
    options: { largestStep: 1e5, tolerance: 5 },
  });
  expect(Math.abs(plate.at(0.6, 0.2) - 18.254)).toBeLessThan(0.1);
});

test.each([
  // Biot, Fourier, centre, surface: full Fourier series, computed
  [0.1, 1, 0.92239, 0.87813],
  [1, 0.5, 0.77253, 0.50452],
  [1, 1, 0.53386, 0.34818],
  [2, 0.5, 0.65962, 0.31313],
  [10, 0.5, 0.45464, 0.06433],
])('a plate at Biot %f follows its series at Fourier %f', (biot, fourier, centre, surface) => {
  const [half, k, c, density] = [0.05, 30, 600, 7800];
  const plate = solved({
    width: half,
    height: half / 20,
    columns: 20,
    rows: 1,
    k,
    c,
    density,
    start: 1000,
    duration: (fourier * half * half * density * c) / k,
    surface: (skin) => [film('film', skin, (biot * k) / half, 0, right)],
    options: { tolerance: 0.05, firstStep: 0.05 },
  });
  // within 0.15 % of the whole difference at a mesh of 2.5 mm
  expect(Math.abs(plate.at(0, 0) / 1000 - centre)).toBeLessThan(0.0015);
  expect(Math.abs(plate.at(half, 0) / 1000 - surface)).toBeLessThan(0.0015);
});

test('a square bar is the product of two plates', () => {
  const [half, k, c, density] = [0.05, 30, 600, 7800];
  const bar = solved({
    width: half,
    height: half,
    columns: 20,
    rows: 20,
    k,
    c,
    density,
    start: 1000,
    duration: (0.5 * half * half * density * c) / k,
    surface: (skin) => [film('film', skin, k / half, 0, (edge) => edge === 1 || edge === 2)],
    options: { tolerance: 0.05, firstStep: 0.05 },
  });
  const [centre, surface] = [0.77253, 0.50452];
  for (const [x, y, exact] of [
    [0, 0, centre * centre],
    [half, 0, centre * surface],
    [half, half, surface * surface],
  ]) {
    expect(Math.abs(bar.at(x, y) / 1000 - exact)).toBeLessThan(0.003);
  }
});

test('a pipe wall warmed by hot oil is where the textbook says', () => {
  // Incropera, example 5.4 (6th ed.), second hand; full series 43.02 °C inside, 45.36 °C at the oil, −7318 W/m²,
  // −2.725e7 J per m of a pipe of 1 m bore: 8.674 MJ per m². Allow 0.15 K and 1 %.
  const height = 0.002;
  const wall = solved({
    width: 0.04,
    height,
    columns: 20,
    rows: 1,
    k: 63.9,
    c: 434,
    density: 7832,
    start: -20,
    duration: 480,
    surface: (skin) => [film('oil', skin, 500, 60, right)],
    options: { tolerance: 0.02, firstStep: 0.1 },
  });
  expect(Math.abs(wall.at(0, 0) - 43.02)).toBeLessThan(0.15);
  expect(Math.abs(wall.at(0.04, 0) - 45.36)).toBeLessThan(0.15);
  expect(Math.abs((500 * (60 - wall.at(0.04, 0))) / 7318 - 1)).toBeLessThan(0.01);
  expect(Math.abs(((wall.gained.oil / height) * Math.PI) / 2.725e7 - 1)).toBeLessThan(0.01);
});

test('frost reaches 0.677 m into the soil in sixty days', () => {
  // Incropera, example 5.6 (20 °C soil, surface −15 °C, k 0.52, ρ 2050, c 1840); inverse erf gives 0.677 m
  const soil = solved({
    width: 5,
    height: 0.04,
    columns: 125,
    rows: 1,
    k: 0.52,
    c: 1840,
    density: 2050,
    start: 20,
    duration: 60 * 86400,
    surface: (skin) => [film('ground', skin, held, -15, left)],
    options: { tolerance: 0.2, firstStep: 10, largestStep: 2 * 86400 },
  });
  let column = 0;
  while (soil.temperature[column + 1] < 0) column++;
  const depth =
    0.04 * (column - soil.temperature[column] / (soil.temperature[column + 1] - soil.temperature[column]));
  expect(Math.abs(depth - 0.677)).toBeLessThan(0.003);
});

test('half the mesh size leaves a quarter of the error', () => {
  const error = (columns: number) => {
    const [half, k, c, density] = [0.05, 30, 600, 7800];
    const plate = solved({
      width: half,
      height: half / columns,
      columns,
      rows: 1,
      k,
      c,
      density,
      start: 1000,
      duration: (half * half * density * c) / k,
      surface: (skin) => [film('film', skin, k / half, 0, right)],
      options: { tolerance: 0.002, firstStep: 0.005 },
    });
    return Math.abs(plate.at(0, 0) / 1000 - 0.533858);
  };
  const order = Math.log2(error(4) / error(8));
  expect(order).toBeGreaterThan(1.8);
  expect(order).toBeLessThan(2.3);
});
