import type { Field } from '../../../outcome/field.ts';
import { interpolated, locator } from '../../../section/locate.ts';
import { nodeAreas, type TriMesh } from '../../../section/mesh.ts';
import type { QuadMesh } from '../quad-mesh.ts';
import { quadNodeAreas } from './node-areas.ts';
import { inTwo } from './split-in-two.ts';

/**
 * Nodal fields of one mesh at the nodes of another over nearly the same section. Each keeps its mean over the area, by
 * an even shift of a few thousandths of its range as a rule, and leaves its old range nowhere: what was nowhere negative
 * stays so. Nodes outside the old mesh take the value of the nearest point of its boundary. `from` may be a whole section
 * with fields alike on both sides of a line of symmetry, or a computed part: pass `{ ...mesh, xy }` for other node places.
 */
export function transferred(
  from: TriMesh | QuadMesh,
  to: QuadMesh,
  fields: readonly Field[],
): Float64Array[] {
  const old = 'quads' in from ? trianglesOf(from) : from;
  const weights = 'quads' in from ? quadNodeAreas(from, from.xy) : nodeAreas(from);
  const places = locator(old).interpolationAt(to.xy);
  const areas = quadNodeAreas(to, to.xy);
  return fields.map((field) => {
    const range = rangeOf(field);
    const values = interpolated(places, field).map((value) => within(range, value));
    shiftToMean(values, areas, meanOf(field, weights), range);
    return values;
  });
}

/** The computed part alone as triangles; its loop is the boundary. */
const trianglesOf = ({ xy, quads, loop }: QuadMesh): TriMesh => ({
  xy,
  triangles: inTwo(quads, xy),
  boundary: Int32Array.from({ length: 2 * loop.length }, (_, i) => loop[((i + 1) >> 1) % loop.length]),
  boundaryEdgeOf: Int32Array.from(loop, (_, i) => i),
});

interface Range {
  readonly least: number;
  readonly most: number;
}

const within = ({ least, most }: Range, value: number): number => Math.min(most, Math.max(least, value));

/** Shifts a field evenly, where its range leaves room, until its mean is the wanted one. */
function shiftToMean(values: Float64Array, areas: Field, wanted: number, range: Range): void {
  const { least, most } = range;
  for (let step = 0; step < 100; step++) {
    const missing = wanted - meanOf(values, areas);
    const open = (value: number): boolean => (missing > 0 ? value < most : value > least);
    let [area, room] = [0, 0];
    for (let i = 0; i < values.length; i++) {
      area += areas[i];
      if (open(values[i])) room += areas[i];
    }
    if (room === 0 || Math.abs(missing) <= 1e-14 * (most - least)) return;
    const shift = (missing * area) / room;
    for (let i = 0; i < values.length; i++) {
      if (open(values[i])) values[i] = within(range, values[i] + shift);
    }
  }
}

function meanOf(values: Field, areas: Field): number {
  let [sum, area] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    sum += areas[i] * values[i];
    area += areas[i];
  }
  return sum / area;
}

function rangeOf(values: Field): Range {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i++) {
    least = Math.min(least, values[i]);
    most = Math.max(most, values[i]);
  }
  return { least, most };
}
