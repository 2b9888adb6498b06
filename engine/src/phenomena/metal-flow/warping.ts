import type { Field, Indices } from '../../outcome/field.ts';
import type { ElementGeometry } from './element-geometry.ts';
import type { Grid } from './grid.ts';
import { centre, nodeMasses } from './warping-modes.ts';

/** How the speed along the bar differs over the section while it crosses one slice. */
export interface Warping {
  /** The modes, carried along by the section; zero mean. One value per node. */
  readonly modes: readonly Float64Array[];
  /** Their gradients, 1/m: two values per node. */
  readonly slopes: readonly Float64Array[];
  /** m/s over the mean speed, per node: as a mean over the slice. */
  readonly excess: Float64Array;
  /** Gradient of the excess where the slice begins and where it ends, 1/s: two per node. */
  readonly entering: Float64Array;
  readonly leaving: Float64Array;
  /** What it adds to the rate along the bar, 1/s, per element. */
  readonly stretch: Float64Array;
}

export function warpingFor(grid: Grid, modes: number): Warping {
  const rows = (size: number) => Array.from({ length: modes }, () => new Float64Array(size));
  return {
    modes: rows(grid.nodes),
    slopes: rows(2 * grid.nodes),
    excess: new Float64Array(grid.nodes),
    entering: new Float64Array(2 * grid.nodes),
    leaving: new Float64Array(2 * grid.nodes),
    stretch: new Float64Array(grid.elements),
  };
}

/**
 * Fills `out` for slice i from the amplitudes at its two sections, m/s. The rate along the bar at a fixed place is that
 * along the path of the steel, less what the steel carries across: (w₁ − w₀)/Δx − v·∇w/u.
 */
export function warp(
  grid: Grid,
  geometry: ElementGeometry,
  amplitudes: readonly Float64Array[],
  i: number,
  { speed, length }: { readonly speed: number; readonly length: number },
  velocity: Field,
  out: Warping,
): void {
  const { modes, slopes, excess, entering, leaving, stretch } = out;
  if (modes.length === 0) return;
  for (const row of [excess, entering, leaving, stretch]) row.fill(0);
  const mass = nodeMasses(grid, geometry.area);
  const area = mass.reduce((sum, each) => sum + each, 0);
  modes.forEach((mode, m) => {
    centre(mode, mass, area);
    nodalSlope(grid, geometry, mode, mass, slopes[m]);
    const [from, to] = [amplitudes[m][i], amplitudes[m][i + 1]];
    for (let node = 0; node < mode.length; node++) excess[node] += ((from + to) / 2) * mode[node];
    for (let at = 0; at < entering.length; at++) {
      entering[at] += from * slopes[m][at];
      leaving[at] += to * slopes[m][at];
    }
    const gain = (to - from) / length;
    for (let k = 0; k < stretch.length; k++) stretch[k] += gain * meanOver(grid.quads, mode, k);
  });
  for (let k = 0; k < stretch.length; k++) stretch[k] -= carried(grid, geometry, excess, velocity, k) / speed;
}

/** Of the four nodes of element k. */
export const meanOver = (quads: Indices, field: Field, k: number): number =>
  (field[quads[4 * k]] + field[quads[4 * k + 1]] + field[quads[4 * k + 2]] + field[quads[4 * k + 3]]) / 4;

/** v·∇w as a mean over element k, m/s². */
function carried(
  { quads }: Grid,
  { divergence, area }: ElementGeometry,
  excess: Field,
  velocity: Field,
  k: number,
): number {
  let [wx, wy, vx, vy] = [0, 0, 0, 0];
  for (let a = 0; a < 4; a++) {
    const node = quads[4 * k + a];
    wx += divergence[8 * k + 2 * a] * excess[node];
    wy += divergence[8 * k + 2 * a + 1] * excess[node];
    vx += velocity[2 * node] / 4;
    vy += velocity[2 * node + 1] / 4;
  }
  return (wx * vx + wy * vy) / area[k];
}

/** Mean gradient of the elements around each node. */
function nodalSlope(
  { quads, elements }: Grid,
  { divergence }: ElementGeometry,
  field: Field,
  mass: Field,
  out: Float64Array,
): void {
  out.fill(0);
  for (let k = 0; k < elements; k++) {
    let [x, y] = [0, 0];
    for (let a = 0; a < 4; a++) {
      const value = field[quads[4 * k + a]];
      x += divergence[8 * k + 2 * a] * value;
      y += divergence[8 * k + 2 * a + 1] * value;
    }
    for (let a = 0; a < 4; a++) {
      const at = 2 * quads[4 * k + a];
      out[at] += x / 4;
      out[at + 1] += y / 4;
    }
  }
  for (let node = 0; node < mass.length; node++) {
    out[2 * node] /= mass[node];
    out[2 * node + 1] /= mass[node];
  }
}
