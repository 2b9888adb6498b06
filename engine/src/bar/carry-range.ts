import type { Field } from '../outcome/field.ts';
import type { TriMesh } from '../section/mesh.ts';

/**
 * Holds nodal values between the least and the greatest of another field, in place: what a node has beyond, it hands to
 * the neighbours along its edges, each by the room that its area leaves. The sum of area times value stays. Where the
 * neighbours have no room the rest is cut off.
 */
export function keepWithin(values: Float64Array, range: Field, mesh: TriMesh, areas: Field): void {
  const [least, greatest] = extremes(range);
  const isBeyond = (value: number) => value < least || value > greatest;
  for (let round = 0; round < rounds && values.some(isBeyond); round++) {
    handOver(values, least, greatest, mesh, areas);
  }
  for (let i = 0; i < values.length; i++) values[i] = Math.min(greatest, Math.max(least, values[i]));
}

/** A neighbour of two nodes may be given too much at first. */
const rounds = 3;

function extremes(field: Field): [least: number, greatest: number] {
  let [least, greatest] = [field[0], field[0]];
  for (let i = 1; i < field.length; i++) {
    least = Math.min(least, field[i]);
    greatest = Math.max(greatest, field[i]);
  }
  return [least, greatest];
}

function handOver(
  values: Float64Array,
  least: number,
  greatest: number,
  { triangles }: TriMesh,
  areas: Field,
): void {
  const beyond = (i: number) => values[i] - Math.min(greatest, Math.max(least, values[i]));
  /** What j may take from i, with its sign. */
  const room = (i: number, j: number) =>
    areas[j] * (values[i] > greatest ? Math.max(0, greatest - values[j]) : Math.min(0, least - values[j]));
  const rooms = new Float64Array(values.length);
  alongEdges(triangles, (i, j) => {
    if (beyond(i) !== 0) rooms[i] += room(i, j);
  });
  const change = new Float64Array(values.length);
  alongEdges(triangles, (i, j) => {
    if (rooms[i] === 0) return;
    const handed = room(i, j) * Math.min(1, (areas[i] * beyond(i)) / rooms[i]);
    change[j] += handed / areas[j];
    change[i] -= handed / areas[i];
  });
  for (let i = 0; i < values.length; i++) values[i] += change[i];
}

/** Every side of every triangle, both ways. */
function alongEdges(triangles: Field, visit: (i: number, j: number) => void): void {
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    visit(a, b);
    visit(b, a);
    visit(b, c);
    visit(c, b);
    visit(c, a);
    visit(a, c);
  }
}
