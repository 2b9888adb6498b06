import { fail, ok, type Result } from '../../../outcome/result.ts';
import { onLineX, onLineY, type Symmetry, skin } from '../quad-mesh.ts';
import type { Quads } from './split-in-three.ts';

/** Boundary nodes nearer to a line of symmetry than this share of the section were meant to be on it, m per m. */
const nearness = 1e-9;

/** Where each edge of the loop lies; nodes on a line of symmetry are put on it to the last digit. */
export function sidesOf({ xy, loop }: Quads, symmetry: Symmetry): Result<Int32Array> {
  const lies = new Int32Array(loop.length).fill(skin);
  for (const [off, at, side] of [
    [0, symmetry.x, onLineX],
    [1, symmetry.y, onLineY],
  ] as const) {
    if (at === undefined) continue;
    const near = nearness * Math.max(...Float64Array.from(loop, (node) => Math.abs(xy[2 * node + off] - at)));
    const isNear = (i: number): boolean => Math.abs(xy[2 * loop[i % loop.length] + off] - at) <= near;
    for (let i = 0; i < loop.length; i++) {
      if (isNear(i)) xy[2 * loop[i] + off] = at;
      if (isNear(i) && isNear(i + 1)) lies[i] = side;
    }
    if (!lies.includes(side)) return notReached(off === 0 ? 'x' : 'y');
  }
  return ok(lies);
}

const notReached = (axis: 'x' | 'y') =>
  fail({ model: 'mesh', reason: `The section does not reach its line of symmetry in ${axis}.` });
