import type { Field } from '../../outcome/field.ts';
import type { ElementGeometry } from './element-geometry.ts';
import type { Grid } from './grid.ts';

/**
 * The flow potential of one slice, W per metre of bar, of the velocities v across the bar and the rate e along it:
 *
 *   Π = Σ A Φ(E) + ½ κ A D²,   E = ⅔ [e² + vᵀK v/A + χ/(2 d²) mean (v − v₋)²] + ε₀²,   D = b·v/A + e
 *   where e of an element is the even rate and what warping adds to it,
 *   Φ(E) = c E^((m+1)/2)/(m+1),   flow stress σ = c E^(m/2)
 *
 * E is the square of the equivalent strain rate, taken as a mean over the element; v₋ the velocities of the slice
 * before, at the distance d: the shear that bends the flow lines. Volume is kept by the penalty κ.
 */
export interface Viscous {
  readonly grid: Grid;
  readonly geometry: ElementGeometry;
  /** Strength over referenceRate^m per element, c: across the section, lowered by axial shear; and of the steel itself. */
  readonly strength: Float64Array;
  readonly ownStrength: Float64Array;
  readonly exponent: Float64Array;
  /** What warping adds to e, 1/s per element. */
  readonly stretch: Float64Array;
  /** v₋, two per node. */
  readonly before: Float64Array;
  /** χ/d², 1/m². */
  shear: number;
  /** κ, Pa s. */
  bulk: number;
  /** ε₀², 1/s². */
  floor: number;
  /** Share of the tangent's softening that is kept: near 1 Newton's method, 0 frozen viscosities. */
  softening: number;
  /** Computed with the potential: E and D per element. */
  readonly rateSquared: Float64Array;
  readonly dilatation: Float64Array;
}

/** Room for one element's numbers while the loop runs. */
export interface ElementRoom {
  readonly v: Float64Array;
  readonly step: Float64Array;
  readonly product: Float64Array;
  /** ∂E/∂v; Φ′ and Φ″. */
  readonly slope: Float64Array;
  first: number;
  second: number;
}

export const elementRoom = (): ElementRoom => ({
  v: new Float64Array(8),
  step: new Float64Array(8),
  product: new Float64Array(8),
  slope: new Float64Array(8),
  first: 0,
  second: 0,
});

export function viscousFor(grid: Grid, geometry: ElementGeometry): Viscous {
  const perElement = () => new Float64Array(grid.elements);
  return {
    grid,
    geometry,
    strength: perElement(),
    ownStrength: perElement(),
    exponent: perElement(),
    stretch: perElement(),
    before: new Float64Array(2 * grid.nodes),
    shear: 0,
    bulk: 0,
    floor: 0,
    softening: 0,
    rateSquared: perElement(),
    dilatation: perElement(),
  };
}

/** Π, with E and D left behind. */
export function potential(flow: Viscous, v: Field, e: number, room: ElementRoom): number {
  const { geometry, strength, exponent, bulk, rateSquared, dilatation } = flow;
  let sum = 0;
  for (let k = 0; k < rateSquared.length; k++) {
    gather(flow, v, k, room);
    const square = rates(flow, e + flow.stretch[k], k, room);
    const m = exponent[k];
    const D = dilatation[k];
    sum += geometry.area[k] * ((strength[k] * square ** ((m + 1) / 2)) / (m + 1) + (bulk * D * D) / 2);
  }
  return sum;
}

function gather({ grid: { quads }, before }: Viscous, v: Field, k: number, { v: own, step }: ElementRoom) {
  for (let a = 0; a < 4; a++) {
    const at = 2 * quads[4 * k + a];
    own[2 * a] = v[at];
    own[2 * a + 1] = v[at + 1];
    step[2 * a] = v[at] - before[at];
    step[2 * a + 1] = v[at + 1] - before[at + 1];
  }
}

/** E of element k; D beside it; K v stays in room.product. */
function rates(flow: Viscous, e: number, k: number, { v, step, product }: ElementRoom): number {
  const { geometry, shear, floor, rateSquared, dilatation } = flow;
  const K = geometry.strain;
  timesStrain(K, 36 * k, v, product);
  let [work, bend, growth] = [0, 0, 0];
  for (let i = 0; i < 8; i++) {
    work += v[i] * product[i];
    bend += step[i] * step[i];
    growth += geometry.divergence[8 * k + i] * v[i];
  }
  const area = geometry.area[k];
  const square = (2 / 3) * (e * e + work / area + (shear * bend) / 8) + floor;
  rateSquared[k] = square;
  dilatation[k] = growth / area + e;
  return square;
}

/** out = K v for one packed element matrix that starts at `at`; written out, because nothing runs more often. */
export function timesStrain(K: Float64Array, at: number, v: Float64Array, out: Float64Array): void {
  const v0 = v[0];
  const v1 = v[1];
  const v2 = v[2];
  const v3 = v[3];
  const v4 = v[4];
  const v5 = v[5];
  const v6 = v[6];
  const v7 = v[7];
  out[0] =
    K[at] * v0 +
    K[at + 1] * v1 +
    K[at + 3] * v2 +
    K[at + 6] * v3 +
    K[at + 10] * v4 +
    K[at + 15] * v5 +
    K[at + 21] * v6 +
    K[at + 28] * v7;
  out[1] =
    K[at + 1] * v0 +
    K[at + 2] * v1 +
    K[at + 4] * v2 +
    K[at + 7] * v3 +
    K[at + 11] * v4 +
    K[at + 16] * v5 +
    K[at + 22] * v6 +
    K[at + 29] * v7;
  out[2] =
    K[at + 3] * v0 +
    K[at + 4] * v1 +
    K[at + 5] * v2 +
    K[at + 8] * v3 +
    K[at + 12] * v4 +
    K[at + 17] * v5 +
    K[at + 23] * v6 +
    K[at + 30] * v7;
  out[3] =
    K[at + 6] * v0 +
    K[at + 7] * v1 +
    K[at + 8] * v2 +
    K[at + 9] * v3 +
    K[at + 13] * v4 +
    K[at + 18] * v5 +
    K[at + 24] * v6 +
    K[at + 31] * v7;
  out[4] =
    K[at + 10] * v0 +
    K[at + 11] * v1 +
    K[at + 12] * v2 +
    K[at + 13] * v3 +
    K[at + 14] * v4 +
    K[at + 19] * v5 +
    K[at + 25] * v6 +
    K[at + 32] * v7;
  out[5] =
    K[at + 15] * v0 +
    K[at + 16] * v1 +
    K[at + 17] * v2 +
    K[at + 18] * v3 +
    K[at + 19] * v4 +
    K[at + 20] * v5 +
    K[at + 26] * v6 +
    K[at + 33] * v7;
  out[6] =
    K[at + 21] * v0 +
    K[at + 22] * v1 +
    K[at + 23] * v2 +
    K[at + 24] * v3 +
    K[at + 25] * v4 +
    K[at + 26] * v5 +
    K[at + 27] * v6 +
    K[at + 34] * v7;
  out[7] =
    K[at + 28] * v0 +
    K[at + 29] * v1 +
    K[at + 30] * v2 +
    K[at + 31] * v3 +
    K[at + 32] * v4 +
    K[at + 33] * v5 +
    K[at + 34] * v6 +
    K[at + 35] * v7;
}

/** Slopes and curvature of Π with respect to e, and everything about v in the arrays. */
export interface Tangent {
  /** Entries of the lower triangle, by the grid's flow layout. */
  readonly matrix: Float64Array;
  /** ∂Π/∂v and ∂²Π/∂v∂e. */
  readonly slope: Float64Array;
  readonly mixed: Float64Array;
  slopeAlong: number;
  curvatureAlong: number;
  /** Π itself. */
  value: number;
}

/** Fills the tangent of Π anew at (v, e); contact and neighbours are added by others. */
export function viscousTangent(flow: Viscous, v: Field, e: number, out: Tangent, room: ElementRoom): void {
  out.matrix.fill(0);
  out.slope.fill(0);
  out.mixed.fill(0);
  out.slopeAlong = 0;
  out.curvatureAlong = 0;
  out.value = 0;
  for (let k = 0; k < flow.rateSquared.length; k++) {
    gather(flow, v, k, room);
    const along = e + flow.stretch[k];
    rates(flow, along, k, room);
    addTangent(flow, along, k, out, room);
  }
}

/** Slope of E of element k at the velocities v, with Φ′ and Φ″ at the E that was computed last, all left in `room`. */
export function elementSlope(flow: Viscous, v: Field, k: number, room: ElementRoom): void {
  gather(flow, v, k, room);
  timesStrain(flow.geometry.strain, 36 * k, room.v, room.product);
  slopeOf(flow, k, room);
}

function slopeOf(flow: Viscous, k: number, room: ElementRoom): void {
  const area = flow.geometry.area[k];
  const m = flow.exponent[k];
  const square = flow.rateSquared[k];
  const { product, step, slope } = room;
  const bending = flow.shear / 6;
  room.first = (flow.strength[k] * square ** ((m - 1) / 2)) / 2;
  room.second = (flow.softening * room.first * (m - 1)) / (2 * square);
  for (let i = 0; i < 8; i++) slope[i] = ((4 / 3) * product[i]) / area + bending * step[i];
}

function addTangent(flow: Viscous, e: number, k: number, out: Tangent, room: ElementRoom): void {
  slopeOf(flow, k, room);
  const { first, second, slope } = room;
  const area = flow.geometry.area[k];
  const m = flow.exponent[k];
  const square = flow.rateSquared[k];
  const D = flow.dilatation[k];
  const along = (4 / 3) * e;
  const bending = flow.shear / 6;
  out.value += area * ((2 * first * square) / (m + 1) + (flow.bulk * D * D) / 2);
  out.slopeAlong += area * (first * along + flow.bulk * D);
  out.curvatureAlong += area * ((4 / 3) * first + second * along * along + flow.bulk);
  addMatrix(flow, k, (4 / 3) * first, area * first * bending, area * second, out.matrix, slope);
  addSlopes(flow, k, area * first, area * second * along, out, slope);
}

/** strain: weight of K; diagonal: of the shear between slices; rank: of slope × slopeᵀ. */
function addMatrix(
  { grid, geometry, bulk }: Viscous,
  k: number,
  strain: number,
  diagonal: number,
  rank: number,
  matrix: Float64Array,
  slope: Float64Array,
): void {
  const { slot } = grid.flow;
  const { divergence } = geometry;
  const K = geometry.strain;
  const volume = bulk / geometry.area[k];
  let at = 36 * k;
  for (let i = 0; i < 8; i++) {
    const own = rank * slope[i];
    const growth = volume * divergence[8 * k + i];
    const row = 64 * k + 8 * i;
    for (let j = 0; j <= i; j++) {
      matrix[slot[row + j]] += strain * K[at++] + own * slope[j] + growth * divergence[8 * k + j];
    }
    matrix[slot[row + i]] += diagonal;
  }
}

function addSlopes(
  { grid: { quads }, geometry: { divergence }, bulk, dilatation }: Viscous,
  k: number,
  first: number,
  mixed: number,
  out: Tangent,
  slope: Float64Array,
): void {
  const push = bulk * dilatation[k];
  for (let i = 0; i < 8; i++) {
    const at = 2 * quads[4 * k + (i >> 1)] + (i & 1);
    out.slope[at] += first * slope[i] + push * divergence[8 * k + i];
    out.mixed[at] += mixed * slope[i] + bulk * divergence[8 * k + i];
  }
}
