/** The arrays that an elimination works on, all of one factor's storage. */
export interface FrontArrays {
  /** L and D of all fronts, panel after panel. */
  readonly lower: Float64Array;
  /** Room for the largest panel: its columns before they are divided by their pivot. */
  readonly unscaled: Float64Array;
  /** Updates that wait for their parent. */
  readonly updates: Float64Array;
}

/** Room of a column of so many numbers: one more where they are odd, so that kernels may work in pairs. */
export const strideOf = (rows: number): number => rows + (rows & 1);

/**
 * Eliminates all pivots of one front, in place: the hot loop of the factorisation.
 *
 * lower[panel + column·stride + row], row ≥ column, holds the pivot columns of the front, `order` rows each;
 * updates[update + …] in the same way the lower triangle of the rows and columns behind them. On return the panel
 * has D on its diagonal and L below it, and the update is A₂₂ − L₂ D L₂ᵀ. Nothing is tested here: a pivot of zero
 * leaves infinities for the caller to find.
 *
 * Every entry (i, j) becomes ((a − x_i0 l_j0) − x_i1 l_j1) − …, where x = L D, whatever the blocking: kernels that keep
 * to this order agree to the last bit.
 */
export function eliminate(
  arrays: FrontArrays,
  panel: number,
  order: number,
  pivots: number,
  update: number,
): void {
  const { lower, unscaled, updates } = arrays;
  const stride = strideOf(order);
  const left = order - pivots;
  const behind = { target: updates, at: update, stride: strideOf(left), rows: left, columns: left };
  let k = 0;
  while (k < pivots) {
    const depth = k + 4 <= pivots ? 4 : 1;
    const [x, c] = [k * (stride + 1), panel + k * (stride + 1)];
    if (depth === 4) factorFour(arrays, c, x, stride, order - k);
    else factorOne(arrays, c, x, order - k);
    k += depth;
    const at = panel + k * (stride + 1);
    const rest = { target: lower, at, stride, rows: order - k, columns: pivots - k };
    const takeOut = depth === 4 ? takeOutFour : takeOutOne;
    takeOut(rest, { lower, at: c + depth, unscaled, from: x + depth, stride });
    const toBorder = depth + pivots - k;
    takeOut(behind, { lower, at: c + toBorder, unscaled, from: x + toBorder, stride });
  }
}

/** The first columns of a lower triangle: target[at + column·stride + row], row ≥ column. */
interface Trapezoid {
  readonly target: Float64Array;
  readonly at: number;
  readonly stride: number;
  readonly rows: number;
  readonly columns: number;
}

/** The rows of eliminated columns beside a trapezoid: L at lower[at + …], L D at unscaled[from + …]. */
interface Eliminated {
  readonly lower: Float64Array;
  readonly at: number;
  readonly unscaled: Float64Array;
  readonly from: number;
  readonly stride: number;
}

/** One column becomes a column of L and D, from its diagonal down. */
function factorOne({ lower, unscaled }: FrontArrays, c: number, x: number, rows: number): void {
  const reciprocal = 1 / lower[c];
  for (let i = 1; i < rows; i++) {
    unscaled[x + i] = lower[c + i];
    lower[c + i] *= reciprocal;
  }
}

/** Four columns side by side become columns of L and D. */
function factorFour(
  { lower, unscaled }: FrontArrays,
  c0: number,
  x: number,
  stride: number,
  rows: number,
): void {
  const c1 = c0 + stride;
  const c2 = c1 + stride;
  const c3 = c2 + stride;
  const r0 = 1 / lower[c0];
  const x10 = lower[c0 + 1];
  const x20 = lower[c0 + 2];
  const x30 = lower[c0 + 3];
  const l10 = x10 * r0;
  const l20 = x20 * r0;
  const l30 = x30 * r0;
  const d1 = lower[c1 + 1] - x10 * l10;
  const r1 = 1 / d1;
  const x21 = lower[c1 + 2] - x20 * l10;
  const x31 = lower[c1 + 3] - x30 * l10;
  const l21 = x21 * r1;
  const l31 = x31 * r1;
  const d2 = lower[c2 + 2] - x20 * l20 - x21 * l21;
  const r2 = 1 / d2;
  const x32 = lower[c2 + 3] - x30 * l20 - x31 * l21;
  const l32 = x32 * r2;
  const d3 = lower[c3 + 3] - x30 * l30 - x31 * l31 - x32 * l32;
  const r3 = 1 / d3;
  lower[c0 + 1] = l10;
  lower[c0 + 2] = l20;
  lower[c0 + 3] = l30;
  lower[c1 + 1] = d1;
  lower[c1 + 2] = l21;
  lower[c1 + 3] = l31;
  lower[c2 + 2] = d2;
  lower[c2 + 3] = l32;
  lower[c3 + 3] = d3;
  for (let i = 4; i < rows; i++) {
    const x0 = lower[c0 + i];
    const x1 = lower[c1 + i] - x0 * l10;
    const x2 = lower[c2 + i] - x0 * l20 - x1 * l21;
    const x3 = lower[c3 + i] - x0 * l30 - x1 * l31 - x2 * l32;
    unscaled[x + i] = x0;
    unscaled[x + stride + i] = x1;
    unscaled[x + 2 * stride + i] = x2;
    unscaled[x + 3 * stride + i] = x3;
    lower[c0 + i] = x0 * r0;
    lower[c1 + i] = x1 * r1;
    lower[c2 + i] = x2 * r2;
    lower[c3 + i] = x3 * r3;
  }
}

function takeOutOne({ target, at, stride, rows, columns }: Trapezoid, source: Eliminated): void {
  const { lower, at: l, unscaled, from: x } = source;
  for (let j = 0; j < columns; j++) {
    const own = at + j * stride;
    const lj = lower[l + j];
    for (let i = j; i < rows; i++) target[own + i] -= unscaled[x + i] * lj;
  }
}

/** Two columns of the trapezoid at a time. */
function takeOutFour(into: Trapezoid, source: Eliminated): void {
  const { target, at, stride, rows, columns } = into;
  const { lower, at: l0, unscaled, from: x0 } = source;
  const l1 = l0 + source.stride;
  const l2 = l1 + source.stride;
  const l3 = l2 + source.stride;
  const x1 = x0 + source.stride;
  const x2 = x1 + source.stride;
  const x3 = x2 + source.stride;
  let j = 0;
  for (; j + 1 < columns; j += 2) {
    const a = at + j * stride;
    const b = a + stride;
    const a0 = lower[l0 + j];
    const a1 = lower[l1 + j];
    const a2 = lower[l2 + j];
    const a3 = lower[l3 + j];
    const b0 = lower[l0 + j + 1];
    const b1 = lower[l1 + j + 1];
    const b2 = lower[l2 + j + 1];
    const b3 = lower[l3 + j + 1];
    for (let i = j; i < rows; i++) {
      const u0 = unscaled[x0 + i];
      const u1 = unscaled[x1 + i];
      const u2 = unscaled[x2 + i];
      const u3 = unscaled[x3 + i];
      target[a + i] = target[a + i] - u0 * a0 - u1 * a1 - u2 * a2 - u3 * a3;
      target[b + i] = target[b + i] - u0 * b0 - u1 * b1 - u2 * b2 - u3 * b3;
    }
  }
  if (j === columns) return;
  const last = { target, at: at + j * (stride + 1), stride, rows: rows - j, columns: 1 };
  for (let k = 0; k < 4; k++) takeOutOne(last, columnOf(source, k, j));
}

/** Column k of what was eliminated, from row j down. */
function columnOf({ lower, at, unscaled, from, stride }: Eliminated, k: number, j: number): Eliminated {
  return { lower, at: at + k * stride + j, unscaled, from: from + k * stride + j, stride };
}
