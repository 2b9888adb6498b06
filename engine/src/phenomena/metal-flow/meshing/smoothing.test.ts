import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import { rectangle } from '../../../section/rectangle.ts';
import { evenMesh } from '../even-mesh.fixture.ts';
import { loopArea, onLineX, onLineY, type QuadMesh, skin } from '../quad-mesh.ts';
import { elementShape, smallestCornerSine } from './element-shape.ts';
import { lyingRail } from './mesh-laws.fixture.ts';
import { quadMesh } from './quads.ts';
import { relaxer } from './smoothing.ts';

const rail = must(quadMesh(lyingRail('60E1'), { size: 0.012, symmetry: { y: 0 } }));
const flat = must(quadMesh(rectangle(0.12, 0.06, 0.002), { size: 0.009, symmetry: { x: 0, y: 0 } }));

/** Presses the flat down right of x = 30 mm, by 5 % and again: a shoulder that no mesh stands without help. */
function pressed(xy: Float64Array): void {
  const width = 0.002;
  for (let i = 0; i < xy.length; i += 2) {
    const away = (xy[i] - 0.03) / width;
    xy[i] += 0.05 * width * Math.log(1 + Math.exp(away));
    xy[i + 1] *= 1 - 0.05 / (1 + Math.exp(-away));
  }
}

/** A mesh whose every third node has gone some way towards a neighbour in its element, lines of symmetry kept. */
function shaken({ xy, quads, loop, lies }: QuadMesh, by: readonly number[]): Float64Array {
  const places = Float64Array.from(xy);
  const held = new Set(Array.from(loop).filter((_, i) => lies[i] !== skin || [...lies].at(i - 1) !== skin));
  for (let k = 0; k < quads.length; k += 3) {
    const [node, other] = [2 * quads[k], 2 * quads[k % 4 === 3 ? k - 3 : k + 1]];
    if (held.has(quads[k])) continue;
    const share = by[k % by.length];
    places[node] += share * (places[other] - places[node]);
    places[node + 1] += share * (places[other + 1] - places[node + 1]);
  }
  return places;
}
const shakes = fc.array(fc.double({ min: 0, max: 0.45, noNaN: true }), { minLength: 40, maxLength: 60 });

test('a mesh as it was made is left alone, and so are its fields', () => {
  for (const mesh of [rail, flat]) {
    const xy = Float64Array.from(mesh.xy);
    const field = Float64Array.from(xy);
    expect(relaxer(mesh)(xy, [field])).toBe(0);
    expect(xy).toEqual(mesh.xy);
    expect(field).toEqual(mesh.xy);
  }
});

test('any shaken mesh: area kept to round-off, the sharpest corner no sharper, lines of symmetry kept', () => {
  for (const mesh of [rail, flat]) {
    const relax = relaxer(mesh);
    let moved = 0;
    fc.assert(
      fc.property(shakes, (by) => {
        const xy = shaken(mesh, by);
        const [area, sine] = [loopArea(mesh.loop, xy), smallestCornerSine(mesh.quads, xy)];
        moved += relax(xy, []);
        expect(Math.abs(loopArea(mesh.loop, xy) / area - 1)).toBeLessThan(1e-14);
        expect(smallestCornerSine(mesh.quads, xy)).toBeGreaterThanOrEqual(Math.min(0.6, sine));
        expectOnLines(mesh, xy);
      }),
      { numRuns: 100 },
    );
    expect(moved).toBeGreaterThan(0);
  }
});

function expectOnLines({ loop, lies, symmetry }: QuadMesh, xy: Float64Array): void {
  for (let i = 0; i < loop.length; i++) {
    for (const node of [loop[i], loop[(i + 1) % loop.length]]) {
      if (lies[i] === onLineX) expect(xy[2 * node]).toBe(symmetry.x);
      if (lies[i] === onLineY) expect(xy[2 * node + 1]).toBe(symmetry.y);
    }
  }
}

test('a shoulder pressed in by 5 % fifteen times would fold the mesh; smoothed after each it keeps 0.2', () => {
  const [alone, helped] = [Float64Array.from(flat.xy), Float64Array.from(flat.xy)];
  const relax = relaxer(flat);
  for (let press = 0; press < 15; press++) {
    pressed(alone);
    pressed(helped);
    relax(helped, []);
  }
  expect(smallestCornerSine(flat.quads, alone)).toBeLessThan(0.1);
  expect(smallestCornerSine(flat.quads, helped)).toBeGreaterThan(0.2);
});

test('a linear field is carried exactly inside, one number or two per node', () => {
  const xy = shaken(flat, [0.4, 0.1, 0.3]);
  const linear = (places: Float64Array) =>
    places.filter((_, i) => i % 2 === 0).map((x, i) => 3 + 20 * x - 7 * places[2 * i + 1]);
  const [one, two] = [linear(xy), Float64Array.from(xy)];
  const before = xy.slice();
  expect(relaxer(flat)(xy, [one, two])).toBeGreaterThan(20);
  const edge = new Set(flat.loop);
  let inside = 0;
  linear(xy).forEach((exact, node) => {
    if (edge.has(node) || xy[2 * node] === before[2 * node]) return;
    inside++;
    expect(one[node]).toBeCloseTo(exact, 12);
    expect(two[2 * node]).toBeCloseTo(xy[2 * node], 13);
    expect(two[2 * node + 1]).toBeCloseTo(xy[2 * node + 1], 13);
  });
  expect(inside).toBeGreaterThan(20);
});

test('no field leaves its range, and what is nought on a line of symmetry stays nought', () => {
  const relax = relaxer(flat);
  fc.assert(
    fc.property(shakes, (by) => {
      const xy = shaken(flat, by);
      const step = Float64Array.from({ length: xy.length / 2 }, (_, i) => (xy[2 * i] > 0.03 ? 1 : 0));
      const across = Float64Array.from(xy, (place, i) =>
        i % 2 === 0 ? place * place : place * (1 + 50 * xy[i - 1]),
      );
      relax(xy, [step, across]);
      expect(Math.min(...step)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...step)).toBeLessThanOrEqual(1);
      for (let i = 0; i < xy.length; i += 2) {
        if (xy[i] === 0) expect(across[i]).toBe(0);
        if (xy[i + 1] === 0) expect(across[i + 1]).toBe(0);
      }
    }),
    { numRuns: 50 },
  );
});

test('skin edges that have drifted apart in ratio are evened out again before any corner is sharp', () => {
  const xy = Float64Array.from(flat.xy);
  const { loop } = flat;
  const at = Array.from(loop).findIndex(
    (node) => xy[2 * node + 1] > 0.0299 && Math.abs(xy[2 * node] - 0.03) < 0.004,
  );
  const [before, node, after] = [-1, 0, 1].map((k) => 2 * loop[(at + k + loop.length) % loop.length]);
  xy[node] += 0.45 * (xy[after] - xy[node]);
  expect(smallestCornerSine(flat.quads, xy)).toBeGreaterThan(0.35);
  const off = Math.abs(xy[node] - (xy[before] + xy[after]) / 2);
  expect(relaxer(flat)(xy, [])).toBeGreaterThan(0);
  expect(Math.abs(xy[node] - (xy[before] + xy[after]) / 2)).toBeLessThan(off / 2);
});

test('the corner of a square stays where it is while its neighbours move', () => {
  const square = must(quadMesh(rectangle(0.05, 0.05, 0), { size: 0.006, symmetry: { x: 0, y: 0 } }));
  const sum = (node: number): number => square.xy[2 * node] + square.xy[2 * node + 1];
  const corner = 2 * Array.from(square.loop).reduce((a, b) => (sum(b) > sum(a) ? b : a));
  const xy = shaken(square, [0.45, 0.2]);
  const before = xy.slice();
  expect(relaxer(square)(xy, [])).toBeGreaterThan(20);
  expect(xy.slice(corner, corner + 2)).toEqual(before.slice(corner, corner + 2));
});

test('the same places give the same places, whatever came before', () => {
  const [fresh, used] = [relaxer(rail), relaxer(rail)];
  used(shaken(rail, [0.4]), []);
  const [a, b] = [shaken(rail, [0.3, 0.1, 0.45]), shaken(rail, [0.3, 0.1, 0.45])];
  fresh(a, []);
  used(b, []);
  expect(a).toEqual(b);
});

test('an element that a wedge presses flat against the line of symmetry is opened again', () => {
  const mesh = evenMesh({ width: 0.08, height: 0.05, columns: 8, rows: 5 });
  const xy = Float64Array.from(mesh.xy);
  const [below, tip] = [4 * 9, 5 * 9];
  xy[2 * tip + 1] = xy[2 * below + 1] + 0.0005;
  const flat = elementShape(mesh.quads, xy, 8 * 4);
  for (let i = 0; i < 3; i++) relaxer(mesh)(xy, []);
  expect(flat).toBeLessThan(0.2);
  expect(elementShape(mesh.quads, xy, 8 * 4)).toBeGreaterThan(2 * flat);
  expect(xy[2 * below]).toBe(0);
});
