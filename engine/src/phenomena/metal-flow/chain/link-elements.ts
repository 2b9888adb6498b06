import { elementSlope, timesStrain } from '../viscous.ts';
import { meanOver } from '../warping.ts';
import type { ChainLink, LinkRoom, SolvedSlice } from './link.ts';

/** So many elements are added to the curvature at once: each of its entries is then read and written once for all. */
const together = 4;
/** Of each of them the squared rate E and the dilatation D count. */
const wide = 2 * together;

/** Changes of E and D of some elements with every unknown of the link: unknown by unknown, E then D of each element. */
interface ElementChanges {
  readonly change: Float64Array;
  /** Second derivatives of the potential by E and by D. */
  readonly weight: Float64Array;
  /** Mean of each mode over the element at hand, by the length of the slice: its rate per amplitude, 1/m. */
  readonly gain: Float64Array;
}

/** Adds what the elements resist with: slopes, and of the curvature all that comes from single elements. */
export function addElements(slice: SolvedSlice, link: ChainLink, { product }: LinkRoom): void {
  const { elements } = slice.task.flow.grid;
  const { size, modes } = link.layout;
  const changes: ElementChanges = {
    change: new Float64Array(wide * size),
    weight: new Float64Array(wide),
    gain: new Float64Array(modes),
  };
  product.fill(0);
  for (let from = 0; from < elements; from += together) {
    changes.change.fill(0);
    const count = Math.min(together, elements - from);
    for (let e = 0; e < count; e++) addElement(slice, link, from + e, 2 * e, changes, product);
    addSquares(link, changes);
  }
}

/** Its slope and what is not a square of its changes; the changes are left at `place`. */
function addElement(
  slice: SolvedSlice,
  link: ChainLink,
  k: number,
  place: number,
  changes: ElementChanges,
  product: Float64Array,
): void {
  const { task, along, velocity, room } = slice;
  const { flow } = task;
  elementSlope(flow, velocity, k, room.element);
  const { first, second } = room.element;
  const area = flow.geometry.area[k];
  changeOf(slice, link, k, along + flow.stretch[k], place, changes);
  changes.weight[place] = area * second;
  changes.weight[place + 1] = area * flow.bulk;
  const [byRate, byGrowth] = [area * first, area * flow.bulk * flow.dilatation[k]];
  for (let i = 0, at = place; i < link.slope.length; i++, at += wide)
    link.slope[i] += byRate * changes.change[at] + byGrowth * changes.change[at + 1];
  addAlong(link, (4 / 3) * first * area, changes.gain);
  strainShapes(slice, link, k, (4 / 3) * first, product);
}

/** Adds the changes' products with themselves; written out, because nothing in a link runs more often. */
function addSquares({ layout: { size }, curvature }: ChainLink, { change, weight }: ElementChanges): void {
  for (let i = 0; i < size; i++) {
    const own = wide * i;
    const a = weight[0] * change[own];
    const b = weight[1] * change[own + 1];
    const c = weight[2] * change[own + 2];
    const d = weight[3] * change[own + 3];
    const e = weight[4] * change[own + 4];
    const f = weight[5] * change[own + 5];
    const g = weight[6] * change[own + 6];
    const h = weight[7] * change[own + 7];
    for (let j = 0, at = 0; j <= i; j++, at += wide) {
      curvature[i * size + j] +=
        a * change[at] +
        b * change[at + 1] +
        c * change[at + 2] +
        d * change[at + 3] +
        e * change[at + 4] +
        f * change[at + 5] +
        g * change[at + 6] +
        h * change[at + 7];
    }
  }
}

function changeOf(
  { task: { flow }, warping: { modes, slopes }, room: { element }, length }: SolvedSlice,
  { layout, shapes, before }: ChainLink,
  k: number,
  along: number,
  place: number,
  { change, gain }: ElementChanges,
): void {
  const { quads } = flow.grid;
  const n = 2 * flow.grid.nodes;
  const bending = flow.shear / 6;
  const spacing = flow.shear > 0 ? 1 / Math.sqrt(flow.shear) : 0;
  const [own, past] = [wide * layout.own + place, wide * layout.before + place];
  const [entering, leaving] = [wide * layout.entering + place, wide * layout.leaving + place];
  for (let i = 0; i < 8; i++) {
    const at = 2 * quads[4 * k + (i >> 1)] + (i & 1);
    const growth = flow.geometry.divergence[8 * k + i] / flow.geometry.area[k];
    const bend = bending * element.step[i];
    for (let a = 0; a < layout.shapes; a++) {
      const shape = shapes[a * n + at];
      change[own + wide * a] += element.slope[i] * shape;
      change[own + wide * a + 1] += growth * shape;
      if (before) change[past + wide * a] -= bend * before[a * n + at];
    }
    for (let l = 0; l < layout.modes; l++) change[entering + wide * l] += bend * spacing * slopes[l][at];
  }
  for (let l = 0; l < layout.modes; l++) {
    gain[l] = meanOver(quads, modes[l], k) / length;
    change[entering + wide * l] -= (4 / 3) * along * gain[l];
    change[leaving + wide * l] = (4 / 3) * along * gain[l];
    change[entering + wide * l + 1] = -gain[l];
    change[leaving + wide * l + 1] = gain[l];
  }
  change[wide * layout.along + place] = (4 / 3) * along;
  change[wide * layout.along + place + 1] = 1;
}

/** The square of the rate along the bar. */
function addAlong({ layout, curvature }: ChainLink, weight: number, gain: Float64Array): void {
  const { size, modes, entering, leaving, along } = layout;
  curvature[along * size + along] += weight;
  for (let l = 0; l < modes; l++) {
    curvature[along * size + entering + l] -= weight * gain[l];
    curvature[along * size + leaving + l] += weight * gain[l];
    for (let m = 0; m < modes; m++) {
      const both = weight * gain[l] * gain[m];
      curvature[(entering + l) * size + entering + m] += both;
      curvature[(leaving + l) * size + leaving + m] += both;
      curvature[(leaving + l) * size + entering + m] -= both;
    }
  }
}

/** Adds weight × K x of every shape x to `product`. */
function strainShapes(
  { task: { flow }, room: { element } }: SolvedSlice,
  { layout, shapes }: ChainLink,
  k: number,
  weight: number,
  product: Float64Array,
): void {
  const { grid, geometry } = flow;
  for (let first = 0; first < layout.shapes * 2 * grid.nodes; first += 2 * grid.nodes) {
    for (let i = 0; i < 8; i++) element.v[i] = shapes[first + 2 * grid.quads[4 * k + (i >> 1)] + (i & 1)];
    timesStrain(geometry.strain, 36 * k, element.v, element.product);
    for (let i = 0; i < 8; i++)
      product[first + 2 * grid.quads[4 * k + (i >> 1)] + (i & 1)] += weight * element.product[i];
  }
}
