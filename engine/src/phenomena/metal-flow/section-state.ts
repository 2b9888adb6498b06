import type { Field } from '../../outcome/field.ts';
import type { Bite, Slice } from './bite.ts';
import { heatStep, workHeat } from './bite-heat.ts';
import { type ElementGeometry, leastJacobian } from './element-geometry.ts';
import type { MarchRoom } from './march-room.ts';
import type { MarchStep } from './marched.ts';
import type { NodeState } from './node-state.ts';

/** Moves the section on to the next one, strains it, and mends the mesh. */
export function advance(
  { grid, problem }: Bite,
  { velocity }: Slice,
  { duration, length, speed, rate, power, touching }: MarchStep,
  room: MarchRoom,
  xy: Float64Array,
  { strain, temperature, heat }: NodeState,
  upstream: Float64Array,
): void {
  const gained = nodalMean(grid, room.geometry, rate);
  const { excess, modes } = room.warping;
  for (let node = 0; node < grid.nodes; node++)
    strain[node] += (gained[node] * length) / (speed + excess[node]);
  const work = workHeat(grid, room.geometry, power, touching, length, duration);
  for (let node = 0; node < grid.nodes; node++) heat[node] += work[node];
  if (problem.heat) {
    heatStep(grid, room.geometry, problem.heat, work, touching, duration, temperature, room.heat);
  }
  const [dx, dy] = [new Float64Array(grid.nodes), new Float64Array(grid.nodes)];
  const [vx, vy] = [new Float64Array(grid.nodes), new Float64Array(grid.nodes)];
  for (let node = 0; node < grid.nodes; node++) {
    vx[node] = velocity[2 * node];
    vy[node] = velocity[2 * node + 1];
    dx[node] = (vx[node] * length) / (speed + excess[node]);
    dy[node] = (vy[node] * length) / (speed + excess[node]);
  }
  const parts = partsOf(grid, velocity, duration, room, xy);
  for (let part = 0; part < parts; part++) {
    for (let node = 0; node < grid.nodes; node++) {
      xy[2 * node] += dx[node] / parts;
      xy[2 * node + 1] += dy[node] / parts;
    }
    room.relax(xy, [strain, temperature, heat, vx, vy, dx, dy, ...modes]);
  }
  for (let node = 0; node < grid.nodes; node++) {
    upstream[2 * node] = vx[node];
    upstream[2 * node + 1] = vy[node];
  }
}

/** Least Jacobian over the mean that an element may have when a step is made at once; and most parts of a step. */
const [squeezed, mostParts] = [0.15, 8];

/** In how many parts a step is made, the mesh being mended in between: more where elements would be squeezed flat. */
function partsOf(
  grid: Bite['grid'],
  velocity: Field,
  duration: number,
  { halfway }: MarchRoom,
  xy: Field,
): number {
  for (let at = 0; at < halfway.length; at++) halfway[at] = xy[at] + duration * velocity[at];
  let [parts, worst] = [1, leastJacobian(grid, halfway)];
  while (worst < squeezed && parts < mostParts) {
    parts *= 2;
    worst = 1 - (1 - worst) / 2;
  }
  return parts;
}

/** Element values at the nodes: means weighted with area. */
function nodalMean(grid: Bite['grid'], { area }: ElementGeometry, values: Field): Float64Array {
  const [sum, weight] = [new Float64Array(grid.nodes), new Float64Array(grid.nodes)];
  for (let k = 0; k < grid.elements; k++) {
    for (let a = 0; a < 4; a++) {
      sum[grid.quads[4 * k + a]] += area[k] * values[k];
      weight[grid.quads[4 * k + a]] += area[k];
    }
  }
  for (let node = 0; node < sum.length; node++) sum[node] /= weight[node];
  return sum;
}
