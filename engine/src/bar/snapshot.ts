import type { Field } from '../outcome/field.ts';
import { meanOver, type TriMesh } from '../section/mesh.ts';
import { sectionProperties } from '../section/properties.ts';
import type { Bar, Place } from './bar.ts';
import type { BarSnapshot, Temperatures } from './station.ts';

/** The picture of a bar that a record keeps. */
export function snapshotOf(bar: Bar): BarSnapshot {
  const core = deepestNode(bar.mesh);
  const at = (place: Place) => temperaturesOf(bar.mesh, place, core);
  return {
    outline: bar.outline,
    area: sectionProperties(bar.outline).area,
    length: bar.length,
    mass: bar.mass,
    pieces: bar.pieces,
    places: { head: at(bar.head), middle: at(bar.middle), tail: at(bar.tail) },
  };
}

/** What a person asks of a temperature field; `core` is the number of the deepest node. */
export function temperaturesOf(
  mesh: TriMesh,
  { clock, temperature }: Place,
  core = deepestNode(mesh),
): Temperatures {
  const { lowest, highest } = extremes(temperature);
  return {
    clock,
    mean: meanOver(mesh, temperature),
    surface: meanAlongBoundary(mesh, temperature),
    core: temperature[core],
    coldest: lowest,
    hottest: highest,
  };
}

export function extremes(field: Field): { lowest: number; highest: number } {
  let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of field) {
    lowest = Math.min(lowest, value);
    highest = Math.max(highest, value);
  }
  return { lowest, highest };
}

/** The node farthest from the surface; the first of equals. */
export function deepestNode({ xy, boundary }: TriMesh): number {
  let [deepest, depth] = [0, -1];
  for (let i = 0; i < xy.length / 2; i++) {
    let nearest = Number.POSITIVE_INFINITY;
    for (let end = 0; end < boundary.length && nearest > depth; end += 2) {
      nearest = Math.min(nearest, squaredDistance(xy, i, boundary[end], boundary[end + 1]));
    }
    if (nearest > depth) [deepest, depth] = [i, nearest];
  }
  return deepest;
}

/** From node i to the edge ab, m². */
function squaredDistance(xy: Field, i: number, a: number, b: number): number {
  const [dx, dy] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
  const [px, py] = [xy[2 * i] - xy[2 * a], xy[2 * i + 1] - xy[2 * a + 1]];
  const along = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
  return (px - along * dx) ** 2 + (py - along * dy) ** 2;
}

function meanAlongBoundary({ xy, boundary }: TriMesh, field: Field): number {
  let [sum, total] = [0, 0];
  for (let end = 0; end < boundary.length; end += 2) {
    const [a, b] = [boundary[end], boundary[end + 1]];
    const length = Math.hypot(xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]);
    sum += (length * (field[a] + field[b])) / 2;
    total += length;
  }
  return sum / total;
}
