// AssemblyScript: ../../substitution.ts for two right-hand sides at once, one in either half of each register.
// x is the address of both, in the order of elimination, 16 bytes per place; `own` that of the front's first pivot.

/** See forward in ../../substitution.ts. */
export function forward(
  panel: usize,
  stride: i32,
  order: i32,
  pivots: i32,
  x: usize,
  own: usize,
  border: usize,
): void {
  let k = 0;
  for (; k + 4 <= pivots; k += 4) {
    const c = panel + k * stride;
    forward4(c + 8 * k, stride, own + 16 * k, pivots - k, x, border, c + 8 * pivots, order - pivots);
  }
  for (; k < pivots; k++) {
    const c = panel + k * stride;
    forward1(c + 8 * k, own + 16 * k, pivots - k, x, border, c + 8 * pivots, order - pivots);
  }
}

function forward4(
  c: usize,
  s: i32,
  own: usize,
  rows: i32,
  x: usize,
  border: usize,
  below: usize,
  left: i32,
): void {
  const x0 = v128.load(own);
  const x1 = less(v128.load(own, 16), c, 8, x0);
  let x2 = less(v128.load(own, 32), c, 16, x0);
  x2 = less(x2, c + s, 16, x1);
  let x3 = less(v128.load(own, 48), c, 24, x0);
  x3 = less(x3, c + s, 24, x1);
  x3 = less(x3, c + 2 * s, 24, x2);
  v128.store(own, x1, 16);
  v128.store(own, x2, 32);
  v128.store(own, x3, 48);
  for (let i = 4; i < rows; i++) takeOut4(own + 16 * i, c + 8 * i, s, x0, x1, x2, x3);
  for (let i = 0; i < left; i++) {
    takeOut4(x + ((<usize>load<u32>(border + 4 * i)) << 4), below + 8 * i, s, x0, x1, x2, x3);
  }
}

/** The number at z less that at l times x. */
function less(z: v128, l: usize, offset: usize, x: v128): v128 {
  return f64x2.sub(z, f64x2.mul(v128.load64_splat(l + offset), x));
}

function takeOut4(at: usize, l: usize, s: i32, x0: v128, x1: v128, x2: v128, x3: v128): void {
  let z = v128.load(at);
  z = f64x2.sub(z, f64x2.mul(v128.load64_splat(l), x0));
  z = f64x2.sub(z, f64x2.mul(v128.load64_splat(l + s), x1));
  z = f64x2.sub(z, f64x2.mul(v128.load64_splat(l + 2 * s), x2));
  z = f64x2.sub(z, f64x2.mul(v128.load64_splat(l + 3 * s), x3));
  v128.store(at, z);
}

function forward1(c: usize, own: usize, rows: i32, x: usize, border: usize, below: usize, left: i32): void {
  const x0 = v128.load(own);
  for (let i = 1; i < rows; i++) takeOut1(own + 16 * i, c + 8 * i, x0);
  for (let i = 0; i < left; i++) {
    takeOut1(x + ((<usize>load<u32>(border + 4 * i)) << 4), below + 8 * i, x0);
  }
}

function takeOut1(at: usize, l: usize, x: v128): void {
  v128.store(at, f64x2.sub(v128.load(at), f64x2.mul(v128.load64_splat(l), x)));
}

/** See backward in ../../substitution.ts. */
export function backward(
  panel: usize,
  stride: i32,
  order: i32,
  pivots: i32,
  x: usize,
  own: usize,
  border: usize,
): void {
  const left = order - pivots;
  let k = pivots;
  while (k & 3) {
    k--;
    const c = panel + k * stride;
    backward1(c + 8 * k, own + 16 * k, pivots - k, x, border, c + 8 * pivots, left);
  }
  while (k > 0) {
    k -= 4;
    const c = panel + k * stride;
    backward4(c + 8 * k, stride, own + 16 * k, pivots - k, x, border, c + 8 * pivots, left);
  }
}

function backward1(c: usize, own: usize, rows: i32, x: usize, border: usize, below: usize, left: i32): void {
  let z = f64x2.div(v128.load(own), v128.load64_splat(c));
  for (let i = 0; i < left; i++) {
    const xi = v128.load(x + ((<usize>load<u32>(border + 4 * i)) << 4));
    z = f64x2.sub(z, f64x2.mul(v128.load64_splat(below + 8 * i), xi));
  }
  for (let i = rows - 1; i > 0; i--) {
    z = f64x2.sub(z, f64x2.mul(v128.load64_splat(c + 8 * i), v128.load(own + 16 * i)));
  }
  v128.store(own, z);
}

function backward4(
  c: usize,
  s: i32,
  own: usize,
  rows: i32,
  x: usize,
  border: usize,
  below: usize,
  left: i32,
): void {
  let z0 = f64x2.div(v128.load(own), v128.load64_splat(c));
  let z1 = f64x2.div(v128.load(own, 16), v128.load64_splat(c + s, 8));
  let z2 = f64x2.div(v128.load(own, 32), v128.load64_splat(c + 2 * s, 16));
  let z3 = f64x2.div(v128.load(own, 48), v128.load64_splat(c + 3 * s, 24));
  for (let i = 0; i < left; i++) {
    const xi = v128.load(x + ((<usize>load<u32>(border + 4 * i)) << 4));
    const l = below + 8 * i;
    z0 = f64x2.sub(z0, f64x2.mul(v128.load64_splat(l), xi));
    z1 = f64x2.sub(z1, f64x2.mul(v128.load64_splat(l + s), xi));
    z2 = f64x2.sub(z2, f64x2.mul(v128.load64_splat(l + 2 * s), xi));
    z3 = f64x2.sub(z3, f64x2.mul(v128.load64_splat(l + 3 * s), xi));
  }
  for (let i = rows - 1; i > 3; i--) {
    const xi = v128.load(own + 16 * i);
    const l = c + 8 * i;
    z0 = f64x2.sub(z0, f64x2.mul(v128.load64_splat(l), xi));
    z1 = f64x2.sub(z1, f64x2.mul(v128.load64_splat(l + s), xi));
    z2 = f64x2.sub(z2, f64x2.mul(v128.load64_splat(l + 2 * s), xi));
    z3 = f64x2.sub(z3, f64x2.mul(v128.load64_splat(l + 3 * s), xi));
  }
  z2 = less(z2, c + 2 * s, 24, z3);
  z1 = less(z1, c + s, 24, z3);
  z1 = less(z1, c + s, 16, z2);
  z0 = less(z0, c, 24, z3);
  z0 = less(z0, c, 16, z2);
  z0 = less(z0, c, 8, z1);
  v128.store(own, z0);
  v128.store(own, z1, 16);
  v128.store(own, z2, 32);
  v128.store(own, z3, 48);
}
