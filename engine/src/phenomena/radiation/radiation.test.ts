import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import type { TriMesh } from '../../section/mesh.ts';
import { conduct } from '../conduction/conduct.ts';
import { conductor } from '../conduction/conductor.ts';
import { plateMesh } from '../conduction/plate-mesh.fixture.ts';
import { skinOf } from '../conduction/surface.ts';
import { naturalConvection, radiation } from './free-surface.ts';
import { crossed, enclosureExchange, gapShare, timofeevExchange } from './furnace-exchange.ts';
import { blackEmission } from './grey.ts';
import { radiosity } from './radiosity.ts';
import { viewFactors } from './view-factors.ts';

test.each([
  // s, °C: Bejan and Kraus, Heat Transfer Handbook, eq. 3.283, evaluated for 900 °C into 25 °C, ε 0.8, ρc 7800 · 650, V/A 11.2 mm
  [60, 821.5],
  [300, 635.5],
  [600, 515.3],
])('a thin body that only radiates follows its closed form: %i s, %f °C', (time, expected) => {
  // so good a conductor that it is even; as thick as 2 · 11.2 mm between its two long faces
  const [thick, wide] = [0.0224, 1];
  const plate = conductor(plateMesh(wide, thick, 20, 1));
  const law = {
    name: 'even',
    source: 'test',
    status: 'computed from exact theory',
    validity: {},
    low: 0,
    high: 2000,
    enthalpy: (T: number) => 650 * (T - 20),
    heatCapacity: () => 650,
    conductivity: () => 1e6,
  } as const;
  const flat = radiation(0.8, 25);
  const surface = [
    {
      ...flat,
      heat(T, t, flux, slope) {
        flat.heat(T, t, flux, slope);
        for (let end = 0; end < flux.length; end++) {
          if (Math.abs(plate.skin.nx[end >> 1]) > 0.5) [flux[end], slope[end]] = [0, 0];
        }
      },
    } satisfies typeof flat,
  ];
  const temperature = new Float64Array(plate.areas.length).fill(900);
  const problem = { massPerMetre: 7800 * thick * wide, law, surface };
  const { temperature: end } = must(conduct(plate, problem, { temperature }, time, { tolerance: 0.05 }));
  expect(Math.abs(end[0] - expected)).toBeLessThan(0.3);
});

/** Boundaries of several outlines in one, for rays only. */
function surfaces(...outlines: readonly (readonly [number, number])[][]): TriMesh {
  const xy: number[] = [];
  const boundary: number[] = [];
  for (const corners of outlines) {
    const first = xy.length / 2;
    corners.forEach(([x, y], k) => {
      xy.push(x, y);
      boundary.push(first + k, first + ((k + 1) % corners.length));
    });
  }
  return { xy, triangles: [], boundary, boundaryEdgeOf: boundary.filter((_, k) => k % 2 === 0) };
}

const slab = (left: number, right: number): [number, number][] => [
  [left, 0],
  [right, 0],
  [right, 1],
  [left, 1],
];

test.each([0.2, 0.5, 1, 2])(
  'rays between two facing walls %f apart agree with crossed strings to 0.2 %%',
  (gap) => {
    const { between } = viewFactors(surfaces(slab(-1, 0), slab(gap, gap + 1)), undefined, {
      points: 64,
      rays: 256,
    });
    expect(Math.abs(between[1 * 8 + 7] / crossed(gap, 1) - 1)).toBeLessThan(0.002);
  },
);

test('an endless row sees itself as crossed strings say, at the accuracy the cooling bed uses', () => {
  // divided walls of a plate 0.1 × 0.2 on a pitch of 0.2: the whole of one side sees the whole of the next
  const mesh = plateMesh(0.1, 0.2, 4, 8);
  const { between, edges } = viewFactors(mesh, { pitch: 0.2 });
  const skin = skinOf(mesh);
  let seen = 0;
  for (let i = 0; i < edges; i++) {
    for (let j = 0; j < edges; j++) {
      if (skin.outlineEdge[i] === 1 && skin.outlineEdge[j] === 3) seen += between[i * edges + j] / 8;
    }
  }
  expect(Math.abs(seen / crossed(0.1, 0.2) - 1)).toBeLessThan(0.002);
});

/** An angle with unequal legs: sees itself, and nothing about it is symmetric. */
const angle: [number, number][] = [
  [0, 0],
  [0.3, 0],
  [0.32, 0.05],
  [0.06, 0.07],
  [0.05, 0.2],
  [0, 0.17],
];

test('what one edge sends to another comes back by the same way, and all that leaves arrives', () => {
  const mesh = surfaces(angle);
  const { between, floor, surroundings, edges } = viewFactors(mesh, { pitch: 0.4, floor: -0.05 });
  const { length } = skinOf(mesh);
  for (let i = 0; i < edges; i++) {
    let sum = floor[i] + surroundings[i];
    for (let j = 0; j < edges; j++) {
      sum += between[i * edges + j];
      expect(length[i] * between[i * edges + j]).toBeCloseTo(length[j] * between[j * edges + i], 14);
    }
    expect(sum).toBeCloseTo(1, 13);
    expect(surroundings[i]).toBeGreaterThanOrEqual(-1e-14);
  }
});

function flows(channel: ReturnType<typeof radiosity>, temperature: Float64Array) {
  const flux = new Float64Array(temperature.length);
  channel.heat(temperature, 0, flux, new Float64Array(temperature.length));
  return flux;
}

test('a row as hot as its surroundings neither gives nor takes', () => {
  const factors = viewFactors(plateMesh(0.1, 0.2, 3, 5), { pitch: 0.18, floor: -0.05 });
  const flux = flows(
    radiosity(factors, { emissivity: 0.8, ambient: 600 }),
    new Float64Array(2 * factors.edges).fill(600),
  );
  for (const q of flux) expect(Math.abs(q)).toBeLessThan(1e-9 * blackEmission(600));
});

test('alone and convex, a section radiates like a free surface', () => {
  const factors = viewFactors(plateMesh(0.1, 0.2, 3, 5));
  const temperature = Float64Array.from({ length: 2 * factors.edges }, (_, end) => 500 + 10 * end);
  const alone = flows(radiosity(factors, { emissivity: 0.7, ambient: 20 }), temperature);
  const free = flows(radiation(0.7, 20), temperature);
  alone.forEach((q, end) => {
    expect(q / free[end]).toBeCloseTo(1, 12);
  });
});

test('a closed pocket between equal hot walls gives off by its mouth only', () => {
  // a row so close that the gap between the walls is the pocket of `gapShare`; even temperature
  const [gap, height, emissivity] = [0.05, 0.2, 0.8];
  const mesh = plateMesh(0.1, height, 1, 1);
  const factors = viewFactors(mesh, { pitch: 0.1 + gap }, { points: 64, rays: 256 });
  const flux = flows(radiosity(factors, { emissivity, ambient: -273.15 }), new Float64Array(8).fill(900));
  const expected = -emissivity * gapShare(gap, height, emissivity) * blackEmission(900);
  expect(Math.abs(flux[2] / expected - 1)).toBeLessThan(0.003);
});

test('furnace factors: a black gas leaves the emissivity of the steel, a wide wall the same', () => {
  expect(timofeevExchange(0.8, 1, 3)).toBeCloseTo(0.8, 12);
  expect(enclosureExchange(0.8, 0.6, 0)).toBeCloseTo(0.8, 12);
  expect(enclosureExchange(0.8, 0.6, 1)).toBeCloseTo(1 / (1 / 0.8 + 1 / 0.6 - 1), 12);
  expect(gapShare(1e6, 1, 0.8)).toBeCloseTo(1, 5);
});

test('still air takes more from a face that looks up than from one that looks down', () => {
  const skin = skinOf(plateMesh(0.1, 0.1, 1, 1));
  const flux = flows(naturalConvection(skin, 20), new Float64Array(8).fill(520));
  const h = (edge: number) => -flux[2 * edge] / 500;
  const root = Math.cbrt(500);
  expect([h(0), h(1), h(2), h(3)].map((each) => each / root)).toEqual(
    [0.9, 1.31, 1.52, 1.31].map((c) => expect.closeTo(c, 9)),
  );
});
