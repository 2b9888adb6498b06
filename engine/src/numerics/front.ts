/**
 * Eliminates the first `pivots` unknowns of a dense symmetric front, in place: the hot loop of the factorisation.
 *
 * front[at + column·order + row], row ≥ column, holds the lower triangle on entry. On return the diagonal of the
 * first `pivots` columns holds D, below it stands L (unit diagonal left out), and the rest is the update
 * A₂₂ − L₂ D L₂ᵀ. Nothing is tested here: a pivot of zero leaves infinities for the caller to find.
 */
export function eliminate(front: Float64Array, at: number, order: number, pivots: number): void {
  let k = 0;
  for (; k + 4 <= pivots; k += 4) {
    factorFour(front, at, order, k);
    updateByFour(front, at, order, k);
  }
  for (; k < pivots; k++) eliminateOne(front, at, order, k);
}

function eliminateOne(front: Float64Array, at: number, order: number, k: number): void {
  const own = at + k * order;
  const reciprocal = 1 / front[own + k];
  for (let j = k + 1; j < order; j++) {
    const target = at + j * order;
    const c = front[own + j] * reciprocal;
    for (let i = j; i < order; i++) front[target + i] -= c * front[own + i];
  }
  for (let i = k + 1; i < order; i++) front[own + i] *= reciprocal;
}

/** Columns k … k + 3 become columns of L and D. */
function factorFour(front: Float64Array, at: number, order: number, k: number): void {
  const c0 = at + k * order;
  const c1 = c0 + order;
  const c2 = c1 + order;
  const c3 = c2 + order;
  const r0 = 1 / front[c0 + k];
  const x10 = front[c0 + k + 1];
  const x20 = front[c0 + k + 2];
  const x30 = front[c0 + k + 3];
  const l10 = x10 * r0;
  const l20 = x20 * r0;
  const l30 = x30 * r0;
  const d1 = front[c1 + k + 1] - l10 * x10;
  const r1 = 1 / d1;
  const x21 = front[c1 + k + 2] - l10 * x20;
  const x31 = front[c1 + k + 3] - l10 * x30;
  const l21 = x21 * r1;
  const l31 = x31 * r1;
  const d2 = front[c2 + k + 2] - l20 * x20 - l21 * x21;
  const r2 = 1 / d2;
  const x32 = front[c2 + k + 3] - l20 * x30 - l21 * x31;
  const l32 = x32 * r2;
  const d3 = front[c3 + k + 3] - l30 * x30 - l31 * x31 - l32 * x32;
  const r3 = 1 / d3;
  front[c0 + k + 1] = l10;
  front[c0 + k + 2] = l20;
  front[c0 + k + 3] = l30;
  front[c1 + k + 1] = d1;
  front[c1 + k + 2] = l21;
  front[c1 + k + 3] = l31;
  front[c2 + k + 2] = d2;
  front[c2 + k + 3] = l32;
  front[c3 + k + 3] = d3;
  for (let i = k + 4; i < order; i++) {
    const x0 = front[c0 + i];
    const x1 = front[c1 + i] - l10 * x0;
    const x2 = front[c2 + i] - l20 * x0 - l21 * x1;
    const x3 = front[c3 + i] - l30 * x0 - l31 * x1 - l32 * x2;
    front[c0 + i] = x0 * r0;
    front[c1 + i] = x1 * r1;
    front[c2 + i] = x2 * r2;
    front[c3 + i] = x3 * r3;
  }
}

/** Takes the part of columns k … k + 3 out of all columns behind them, two at a time. */
function updateByFour(front: Float64Array, at: number, order: number, k: number): void {
  const l0 = at + k * order;
  const l1 = l0 + order;
  const l2 = l1 + order;
  const l3 = l2 + order;
  const d0 = front[l0 + k];
  const d1 = front[l1 + k + 1];
  const d2 = front[l2 + k + 2];
  const d3 = front[l3 + k + 3];
  let j = k + 4;
  for (; j + 1 < order; j += 2) {
    const a = at + j * order;
    const b = a + order;
    const a0 = front[l0 + j] * d0;
    const a1 = front[l1 + j] * d1;
    const a2 = front[l2 + j] * d2;
    const a3 = front[l3 + j] * d3;
    const b0 = front[l0 + j + 1] * d0;
    const b1 = front[l1 + j + 1] * d1;
    const b2 = front[l2 + j + 1] * d2;
    const b3 = front[l3 + j + 1] * d3;
    front[a + j] -= front[l0 + j] * a0 + front[l1 + j] * a1 + front[l2 + j] * a2 + front[l3 + j] * a3;
    for (let i = j + 1; i < order; i++) {
      const x0 = front[l0 + i];
      const x1 = front[l1 + i];
      const x2 = front[l2 + i];
      const x3 = front[l3 + i];
      front[a + i] -= x0 * a0 + x1 * a1 + x2 * a2 + x3 * a3;
      front[b + i] -= x0 * b0 + x1 * b1 + x2 * b2 + x3 * b3;
    }
  }
  if (j < order) {
    const last = at + j * order + j;
    front[last] -=
      front[l0 + j] ** 2 * d0 + front[l1 + j] ** 2 * d1 + front[l2 + j] ** 2 * d2 + front[l3 + j] ** 2 * d3;
  }
}
