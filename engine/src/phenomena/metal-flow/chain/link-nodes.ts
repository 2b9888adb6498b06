import type { ChainLink, LinkRoom, SolvedSlice } from './link.ts';

/**
 * Adds the quadratic part of the shear between this slice and the one before, of the strain across the bar, of the drag, and
 * of what straightens the bar behind the last slice.
 */
export function addNodes(slice: SolvedSlice, link: ChainLink, room: LinkRoom): void {
  const { layout } = link;
  const n = slice.velocity.length;
  const first = link.before ? layout.before : layout.entering;
  fillBends(slice, link, room);
  addDots(link, room.held, room.bends, first, layout.leaving, n);
  holdOwn(slice, link, room);
  addDots(link, room.held, room.bends, layout.own, layout.leaving, n);
}

/** Step of the velocities from the slice before to this one by every unknown, and the same times the shear's stiffness. */
function fillBends(
  { task: { flow }, warping: { slopes }, hold }: SolvedSlice,
  { layout, shapes, before }: ChainLink,
  { bends, held }: LinkRoom,
): void {
  const n = 2 * flow.grid.nodes;
  const spacing = flow.shear > 0 ? 1 / Math.sqrt(flow.shear) : 0;
  for (let a = 0; a < layout.shapes; a++) {
    for (let i = 0; i < n; i++) {
      bends[(layout.own + a) * n + i] = shapes[a * n + i];
      if (before) bends[(layout.before + a) * n + i] = -before[a * n + i];
    }
  }
  slopes.forEach((slope, l) => {
    for (let i = 0; i < n; i++) bends[(layout.entering + l) * n + i] = spacing * slope[i];
  });
  for (let row = 0; row < layout.leaving; row++)
    for (let i = 0; i < n; i++) held[row * n + i] = ((hold[i >> 1] * flow.shear) / 6) * bends[row * n + i];
}

/** What holds a slice's own shapes: the strain in them, drag, and in the last slice the straight bar behind it. */
function holdOwn(
  { task, velocity, isLast }: SolvedSlice,
  link: ChainLink,
  { held, product }: LinkRoom,
): void {
  const { layout, shapes, slope } = link;
  const n = velocity.length;
  for (let a = 0; a < layout.shapes; a++) {
    let load = 0;
    for (let i = 0; i < n; i++) {
      const own = (task.drag + (isLast ? task.coupling[i >> 1] : 0)) * shapes[a * n + i];
      load += own * velocity[i];
      held[(layout.own + a) * n + i] = product[a * n + i] + own;
    }
    slope[layout.own + a] += load;
  }
}

/** Adds the products of the rows from `first` to `end`, each with those before it. */
function addDots(
  { layout: { size }, curvature }: ChainLink,
  held: Float64Array,
  bends: Float64Array,
  first: number,
  end: number,
  n: number,
): void {
  for (let row = first; row < end; row++) {
    for (let column = first; column <= row; column++)
      curvature[row * size + column] += dot(held, row * n, bends, column * n, n);
  }
}

function dot(a: Float64Array, from: number, b: Float64Array, to: number, n: number): number {
  let [even, odd] = [0, 0];
  for (let i = 0; i < n; i += 2) {
    even += a[from + i] * b[to + i];
    odd += a[from + i + 1] * b[to + i + 1];
  }
  return even + odd;
}
