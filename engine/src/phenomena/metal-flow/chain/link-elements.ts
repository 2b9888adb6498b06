import { elementSlope, timesStrain } from '../viscous.ts';
import { meanOver } from '../warping.ts';
import type { ChainLink, LinkRoom, SolvedSlice } from './link.ts';

/** Changes of one element's squared rate E and of its dilatation D with every unknown of the link, and its means of the modes. */
interface ElementChange {
  readonly rate: Float64Array;
  readonly dilatation: Float64Array;
  /** Mean of each mode over the element, by the length of the slice: its rate per amplitude, 1/m. */
  readonly gain: Float64Array;
}

/** Adds what the elements resist with: slopes, and of the curvature all that comes from single elements. */
export function addElements(slice: SolvedSlice, link: ChainLink, { product }: LinkRoom): void {
  const { task, along, velocity, room } = slice;
  const { flow } = task;
  const { layout, slope, curvature } = link;
  const { size } = layout;
  const change: ElementChange = {
    rate: new Float64Array(size),
    dilatation: new Float64Array(size),
    gain: new Float64Array(layout.modes),
  };
  product.fill(0);
  for (let k = 0; k < flow.grid.elements; k++) {
    elementSlope(flow, velocity, k, room.element);
    const { first, second } = room.element;
    const area = flow.geometry.area[k];
    changeOf(slice, link, k, along + flow.stretch[k], change);
    const push = flow.bulk * flow.dilatation[k];
    for (let i = 0; i < size; i++) {
      slope[i] += area * (first * change.rate[i] + push * change.dilatation[i]);
      const [byRate, byGrowth] = [area * second * change.rate[i], area * flow.bulk * change.dilatation[i]];
      for (let j = 0; j <= i; j++)
        curvature[i * size + j] += byRate * change.rate[j] + byGrowth * change.dilatation[j];
    }
    addAlong(link, (4 / 3) * first * area, change.gain);
    strainShapes(slice, link, k, (4 / 3) * first, product);
  }
}

function changeOf(
  { task: { flow }, warping: { modes, slopes }, room: { element }, length }: SolvedSlice,
  { layout, shapes, before }: ChainLink,
  k: number,
  along: number,
  { rate, dilatation, gain }: ElementChange,
): void {
  const { quads } = flow.grid;
  const n = 2 * flow.grid.nodes;
  const bending = flow.shear / 6;
  const spacing = flow.shear > 0 ? 1 / Math.sqrt(flow.shear) : 0;
  rate.fill(0);
  dilatation.fill(0);
  for (let i = 0; i < 8; i++) {
    const at = 2 * quads[4 * k + (i >> 1)] + (i & 1);
    const growth = flow.geometry.divergence[8 * k + i] / flow.geometry.area[k];
    const bend = bending * element.step[i];
    for (let a = 0; a < layout.shapes; a++) {
      const shape = shapes[a * n + at];
      rate[layout.own + a] += element.slope[i] * shape;
      dilatation[layout.own + a] += growth * shape;
      if (before) rate[layout.before + a] -= bend * before[a * n + at];
    }
    for (let l = 0; l < layout.modes; l++) rate[layout.entering + l] += bend * spacing * slopes[l][at];
  }
  for (let l = 0; l < layout.modes; l++) {
    gain[l] = meanOver(quads, modes[l], k) / length;
    rate[layout.entering + l] -= (4 / 3) * along * gain[l];
    rate[layout.leaving + l] = (4 / 3) * along * gain[l];
    dilatation[layout.entering + l] = -gain[l];
    dilatation[layout.leaving + l] = gain[l];
  }
  rate[layout.along] = (4 / 3) * along;
  dilatation[layout.along] = 1;
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
