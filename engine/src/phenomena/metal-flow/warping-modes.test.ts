import { describe, expect, test } from 'vitest';
import { geometryFor, measureElements } from './element-geometry.ts';
import { evenMesh } from './even-mesh.fixture.ts';
import { gridOf } from './grid.ts';
import { nodeMasses, warpingModes } from './warping-modes.ts';

const [width, height] = [0.08, 0.05];
const block = (columns: number, distortion = 0) =>
  evenMesh({ width, height, columns, rows: Math.round((columns * height) / width), distortion });
const modesOf = (mesh: ReturnType<typeof block>, count: number) => {
  const grid = gridOf(mesh);
  const geometry = geometryFor(grid);
  measureElements(grid, mesh.xy, geometry);
  const mass = nodeMasses(grid, geometry.area);
  return { modes: warpingModes(grid, mesh.xy, count), mass, area: width * height };
};
const product = (a: Float64Array, b: Float64Array, mass: Float64Array) =>
  a.reduce((sum, value, node) => sum + value * b[node] * mass[node], 0);

describe('modes of warping', () => {
  test('are of zero mean, of mean square 1, and apart from each other', () => {
    const { modes, mass, area } = modesOf(block(8, 0.2), 5);
    const one = new Float64Array(mass.length).fill(1);
    modes.forEach((mode, m) => {
      expect(product(mode, one, mass) / area).toBeCloseTo(0, 12);
      modes.forEach((other, o) => {
        expect(product(mode, other, mass) / area).toBeCloseTo(m === o ? 1 : 0, 10);
      });
    });
  });

  test.each([
    [0, 1, 0],
    [1, 0, 1],
    [2, 1, 1],
  ])('of a block, number %d, is √2 cos %d πx/w cos %d πy/h: exact', (m, p, q) => {
    const mesh = block(32);
    const { modes, mass, area } = modesOf(mesh, 3);
    const exact = Float64Array.from({ length: mesh.xy.length / 2 }, (_, node) => {
      const [x, y] = [mesh.xy[2 * node], mesh.xy[2 * node + 1]];
      return (
        Math.SQRT2 ** (p + q) * Math.cos((p * Math.PI * x) / width) * Math.cos((q * Math.PI * y) / height)
      );
    });
    expect(Math.abs(product(modes[m], exact, mass) / area)).toBeGreaterThan(0.999);
  });

  test('none when none are asked for', () => {
    expect(modesOf(block(4), 0).modes).toEqual([]);
  });
});
