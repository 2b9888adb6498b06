// AssemblyScript: ../../front.ts with two numbers in each register. Every entry goes through the same
// operations in the same order as there, so both give the same bits. Addresses and strides count bytes.
// An odd count of rows is rounded up: columns have room for one more row, whose content nobody reads.

/** See eliminate in ../../front.ts. x: room for the unscaled columns, same stride as the panel. */
export function eliminate(
  panel: usize,
  stride: i32,
  order: i32,
  pivots: i32,
  x: usize,
  update: usize,
  updateStride: i32,
): void {
  const down = stride + 8;
  let k = 0;
  for (; k + 4 <= pivots; k += 4) {
    takeFrom4(panel + k * down, stride, x + 8 * k, panel + 8 * k, stride, order - k, k);
    factor4(panel + k * down, x + k * down, stride, order - k);
  }
  if (k + 2 <= pivots) {
    takeFrom2(panel + k * down, stride, x + 8 * k, panel + 8 * k, stride, order - k, k);
    factor2(panel + k * down, x + k * down, stride, order - k);
    k += 2;
  }
  if (k < pivots) {
    takeFrom1(panel + k * down, x + 8 * k, panel + 8 * k, stride, order - k, k);
    factor1(panel + k * down, x + k * down, order - k);
  }
  takeFromUpdate(update, updateStride, x + 8 * pivots, panel + 8 * pivots, stride, order - pivots, pivots);
}

/** Takes x lᵀ out of the lower triangle of the update. */
function takeFromUpdate(c: usize, cs: i32, x: usize, l: usize, s: i32, left: i32, depth: i32): void {
  let j = 0;
  for (; j + 4 <= left; j += 4) takeFrom4(c + j * (cs + 8), cs, x + 8 * j, l + 8 * j, s, left - j, depth);
  if (j + 2 <= left) {
    takeFrom2(c + j * (cs + 8), cs, x + 8 * j, l + 8 * j, s, left - j, depth);
    j += 2;
  }
  if (j < left) takeFrom1(c + j * (cs + 8), x + 8 * j, l + 8 * j, s, left - j, depth);
}

/** Takes the products of `depth` earlier columns out of four columns c. */
function takeFrom4(c: usize, cs: i32, x: usize, l: usize, s: i32, rows: i32, depth: i32): void {
  if (depth === 0) return;
  let i = 0;
  for (; i + 4 <= rows; i += 4) tile4x4(c + 8 * i, cs, x + 8 * i, l, s, depth);
  for (; i < rows; i += 2) tile2x4(c + 8 * i, cs, x + 8 * i, l, s, depth);
}

function takeFrom2(c: usize, cs: i32, x: usize, l: usize, s: i32, rows: i32, depth: i32): void {
  if (depth === 0) return;
  let i = 0;
  for (; i + 4 <= rows; i += 4) tile4x2(c + 8 * i, cs, x + 8 * i, l, s, depth);
  for (; i < rows; i += 2) tile2x2(c + 8 * i, cs, x + 8 * i, l, s, depth);
}

function takeFrom1(c: usize, x: usize, l: usize, s: i32, rows: i32, depth: i32): void {
  for (let i = 0; i < rows; i += 2) tile2x1(c + 8 * i, x + 8 * i, l, s, depth);
}

function tile4x4(c: usize, cs: i32, x: usize, l: usize, s: i32, depth: i32): void {
  const c1 = c + cs;
  const c2 = c1 + cs;
  const c3 = c2 + cs;
  let a0 = v128.load(c);
  let b0 = v128.load(c, 16);
  let a1 = v128.load(c1);
  let b1 = v128.load(c1, 16);
  let a2 = v128.load(c2);
  let b2 = v128.load(c2, 16);
  let a3 = v128.load(c3);
  let b3 = v128.load(c3, 16);
  for (let k = 0; k < depth; k++) {
    const a = v128.load(x);
    const b = v128.load(x, 16);
    const l0 = v128.load64_splat(l);
    a0 = f64x2.sub(a0, f64x2.mul(a, l0));
    b0 = f64x2.sub(b0, f64x2.mul(b, l0));
    const l1 = v128.load64_splat(l, 8);
    a1 = f64x2.sub(a1, f64x2.mul(a, l1));
    b1 = f64x2.sub(b1, f64x2.mul(b, l1));
    const l2 = v128.load64_splat(l, 16);
    a2 = f64x2.sub(a2, f64x2.mul(a, l2));
    b2 = f64x2.sub(b2, f64x2.mul(b, l2));
    const l3 = v128.load64_splat(l, 24);
    a3 = f64x2.sub(a3, f64x2.mul(a, l3));
    b3 = f64x2.sub(b3, f64x2.mul(b, l3));
    x += s;
    l += s;
  }
  v128.store(c, a0);
  v128.store(c, b0, 16);
  v128.store(c1, a1);
  v128.store(c1, b1, 16);
  v128.store(c2, a2);
  v128.store(c2, b2, 16);
  v128.store(c3, a3);
  v128.store(c3, b3, 16);
}

function tile2x4(c: usize, cs: i32, x: usize, l: usize, s: i32, depth: i32): void {
  const c1 = c + cs;
  const c2 = c1 + cs;
  const c3 = c2 + cs;
  let a0 = v128.load(c);
  let a1 = v128.load(c1);
  let a2 = v128.load(c2);
  let a3 = v128.load(c3);
  for (let k = 0; k < depth; k++) {
    const a = v128.load(x);
    a0 = f64x2.sub(a0, f64x2.mul(a, v128.load64_splat(l)));
    a1 = f64x2.sub(a1, f64x2.mul(a, v128.load64_splat(l, 8)));
    a2 = f64x2.sub(a2, f64x2.mul(a, v128.load64_splat(l, 16)));
    a3 = f64x2.sub(a3, f64x2.mul(a, v128.load64_splat(l, 24)));
    x += s;
    l += s;
  }
  v128.store(c, a0);
  v128.store(c1, a1);
  v128.store(c2, a2);
  v128.store(c3, a3);
}

function tile4x2(c: usize, cs: i32, x: usize, l: usize, s: i32, depth: i32): void {
  let a0 = v128.load(c);
  let b0 = v128.load(c, 16);
  let a1 = v128.load(c + cs);
  let b1 = v128.load(c + cs, 16);
  for (let k = 0; k < depth; k++) {
    const a = v128.load(x);
    const b = v128.load(x, 16);
    const l0 = v128.load64_splat(l);
    const l1 = v128.load64_splat(l, 8);
    a0 = f64x2.sub(a0, f64x2.mul(a, l0));
    b0 = f64x2.sub(b0, f64x2.mul(b, l0));
    a1 = f64x2.sub(a1, f64x2.mul(a, l1));
    b1 = f64x2.sub(b1, f64x2.mul(b, l1));
    x += s;
    l += s;
  }
  v128.store(c, a0);
  v128.store(c, b0, 16);
  v128.store(c + cs, a1);
  v128.store(c + cs, b1, 16);
}

function tile2x2(c: usize, cs: i32, x: usize, l: usize, s: i32, depth: i32): void {
  let a0 = v128.load(c);
  let a1 = v128.load(c + cs);
  for (let k = 0; k < depth; k++) {
    const a = v128.load(x);
    a0 = f64x2.sub(a0, f64x2.mul(a, v128.load64_splat(l)));
    a1 = f64x2.sub(a1, f64x2.mul(a, v128.load64_splat(l, 8)));
    x += s;
    l += s;
  }
  v128.store(c, a0);
  v128.store(c + cs, a1);
}

function tile2x1(c: usize, x: usize, l: usize, s: i32, depth: i32): void {
  let a0 = v128.load(c);
  for (let k = 0; k < depth; k++) {
    a0 = f64x2.sub(a0, f64x2.mul(v128.load(x), v128.load64_splat(l)));
    x += s;
    l += s;
  }
  v128.store(c, a0);
}

/** Four columns, from their diagonal down, become columns of L and D; x takes their unscaled rows below. */
function factor4(c: usize, x: usize, s: i32, rows: i32): void {
  const c1 = c + s;
  const c2 = c1 + s;
  const c3 = c2 + s;
  const r0 = 1 / load<f64>(c);
  const x10 = load<f64>(c, 8);
  const x20 = load<f64>(c, 16);
  const x30 = load<f64>(c, 24);
  const l10 = x10 * r0;
  const l20 = x20 * r0;
  const l30 = x30 * r0;
  const d1 = load<f64>(c1, 8) - x10 * l10;
  const r1 = 1 / d1;
  const x21 = load<f64>(c1, 16) - x20 * l10;
  const x31 = load<f64>(c1, 24) - x30 * l10;
  const l21 = x21 * r1;
  const l31 = x31 * r1;
  const d2 = load<f64>(c2, 16) - x20 * l20 - x21 * l21;
  const r2 = 1 / d2;
  const x32 = load<f64>(c2, 24) - x30 * l20 - x31 * l21;
  const l32 = x32 * r2;
  const d3 = load<f64>(c3, 24) - x30 * l30 - x31 * l31 - x32 * l32;
  store<f64>(c, l10, 8);
  store<f64>(c, l20, 16);
  store<f64>(c, l30, 24);
  store<f64>(c1, d1, 8);
  store<f64>(c1, l21, 16);
  store<f64>(c1, l31, 24);
  store<f64>(c2, d2, 16);
  store<f64>(c2, l32, 24);
  store<f64>(c3, d3, 24);
  below4(c + 32, x + 32, s, rows - 4, l10, l20, l30, l21, l31, l32, r0, r1, r2, 1 / d3);
}

function below4(
  c: usize,
  x: usize,
  s: i32,
  rows: i32,
  l10: f64,
  l20: f64,
  l30: f64,
  l21: f64,
  l31: f64,
  l32: f64,
  r0: f64,
  r1: f64,
  r2: f64,
  r3: f64,
): void {
  for (let i = 0; i < rows; i += 2) {
    const x0 = v128.load(c);
    const x1 = f64x2.sub(v128.load(c + s), f64x2.mul(x0, f64x2.splat(l10)));
    let x2 = f64x2.sub(v128.load(c + 2 * s), f64x2.mul(x0, f64x2.splat(l20)));
    x2 = f64x2.sub(x2, f64x2.mul(x1, f64x2.splat(l21)));
    let x3 = f64x2.sub(v128.load(c + 3 * s), f64x2.mul(x0, f64x2.splat(l30)));
    x3 = f64x2.sub(x3, f64x2.mul(x1, f64x2.splat(l31)));
    x3 = f64x2.sub(x3, f64x2.mul(x2, f64x2.splat(l32)));
    v128.store(x, x0);
    v128.store(x + s, x1);
    v128.store(x + 2 * s, x2);
    v128.store(x + 3 * s, x3);
    v128.store(c, f64x2.mul(x0, f64x2.splat(r0)));
    v128.store(c + s, f64x2.mul(x1, f64x2.splat(r1)));
    v128.store(c + 2 * s, f64x2.mul(x2, f64x2.splat(r2)));
    v128.store(c + 3 * s, f64x2.mul(x3, f64x2.splat(r3)));
    c += 16;
    x += 16;
  }
}

function factor2(c: usize, x: usize, s: i32, rows: i32): void {
  const r0 = 1 / load<f64>(c);
  const x10 = load<f64>(c, 8);
  const l10 = x10 * r0;
  const d1 = load<f64>(c + s, 8) - x10 * l10;
  const r1 = 1 / d1;
  store<f64>(c, l10, 8);
  store<f64>(c + s, d1, 8);
  for (let i = 2; i < rows; i += 2) {
    c += 16;
    x += 16;
    const x0 = v128.load(c);
    const x1 = f64x2.sub(v128.load(c + s), f64x2.mul(x0, f64x2.splat(l10)));
    v128.store(x, x0);
    v128.store(x + s, x1);
    v128.store(c, f64x2.mul(x0, f64x2.splat(r0)));
    v128.store(c + s, f64x2.mul(x1, f64x2.splat(r1)));
  }
}

function factor1(c: usize, x: usize, rows: i32): void {
  const r0 = 1 / load<f64>(c);
  for (let i = 1; i < rows; i++) {
    c += 8;
    x += 8;
    const x0 = load<f64>(c);
    store<f64>(x, x0);
    store<f64>(c, x0 * r0);
  }
}

/**
 * Adds a child's update to its parent: rows[i] is where row i of the update stands in the parent's front,
 * ascending; those before `pivots` are in the panel, the others in the parent's own update.
 */
export function addUpdate(
  child: usize,
  childStride: i32,
  left: i32,
  rows: usize,
  panel: usize,
  stride: i32,
  pivots: i32,
  update: usize,
  updateStride: i32,
): void {
  const own = update - 8 * pivots;
  for (let j = 0; j < left; j++) {
    const row = load<i32>(rows + 4 * j);
    const to = row < pivots ? panel + row * stride : own + (row - pivots) * updateStride;
    addColumn(child + j * childStride, rows, to, j, left);
  }
}

function addColumn(from: usize, rows: usize, to: usize, first: i32, end: i32): void {
  for (let i = first; i < end; i++) {
    const at = to + 8 * load<i32>(rows + 4 * i);
    store<f64>(at, load<f64>(at) + load<f64>(from + 8 * i));
  }
}
