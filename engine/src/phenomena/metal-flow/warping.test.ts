import { expect, test } from 'vitest';
import { geometryFor, measureElements } from './element-geometry.ts';
import { evenMesh } from './even-mesh.fixture.ts';
import { gridOf } from './grid.ts';
import { warp, warpingFor } from './warping.ts';
import { warpingModes } from './warping-modes.ts';

const mesh = evenMesh({ width: 0.08, height: 0.05, columns: 8, rows: 5, distortion: 0.2 });
const grid = gridOf(mesh);
const geometry = geometryFor(grid);
measureElements(grid, mesh.xy, geometry);
const motion = { speed: 2, duration: 0.005, length: 0.01 };

function warped(amplitudes: readonly Float64Array[], velocity: Float64Array) {
  const warping = warpingFor(grid, amplitudes.length);
  warpingModes(grid, mesh.xy, amplitudes.length).forEach((mode, m) => {
    warping.modes[m].set(mode);
  });
  warp(grid, geometry, amplitudes, 0, motion, velocity, warping);
  return warping;
}

const still = new Float64Array(mesh.xy.length);

test('a section that warps more and more lengthens here as much as it shortens there', () => {
  const { stretch, excess } = warped([Float64Array.of(0.01, 0.03), Float64Array.of(0, -0.02)], still);
  const mean = (sum: number, value: number, k: number) => sum + geometry.area[k] * value;
  expect(stretch.reduce(mean, 0)).toBeCloseTo(0, 15);
  expect(Math.max(...stretch)).toBeGreaterThan(0.1);
  expect(Math.max(...excess)).toBeGreaterThan(0.01);
});

test('steel that moves across to where the bar runs ahead must be stretched the less: −v·∇w/u', () => {
  const across = still.map((_, at) => (at % 2 === 0 ? 0.3 : 0));
  const { stretch, excess } = warped([Float64Array.of(0.02, 0.02)], across);
  const slopeOver = (k: number) => {
    let slope = 0;
    for (let a = 0; a < 4; a++) slope += geometry.divergence[8 * k + 2 * a] * excess[mesh.quads[4 * k + a]];
    return slope / geometry.area[k];
  };
  stretch.forEach((value, k) => {
    expect(value).toBeCloseTo((-0.3 * slopeOver(k)) / motion.speed, 10);
  });
});
