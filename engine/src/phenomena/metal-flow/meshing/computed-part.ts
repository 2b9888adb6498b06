import { fail, ok, type Result } from '../../../outcome/result.ts';
import { cutAt } from '../../../section/cut.ts';
import type { Outline } from '../../../section/outline.ts';
import type { Symmetry } from '../quad-mesh.ts';

/** A vertex nearer to a line of symmetry than this share of the section stands on it, m per m. */
const nearness = 1e-6;

/**
 * What symmetry leaves of an outline to be computed: the part above y = symmetry.y and right of x = symmetry.x.
 * An outline that is that part already stays as it is. Fails where the lines leave nothing, or parts that do not hang
 * together.
 */
export function computedPart(outline: Outline, symmetry: Symmetry): Result<Outline> {
  let part = outline;
  for (const axis of ['y', 'x'] as const) {
    const at = symmetry[axis];
    if (at === undefined) continue;
    const { above } = cutAt(settledOn(part, axis, at), axis, at);
    if (above.length !== 1) return badlyCut(axis, above.length);
    part = above[0];
  }
  return ok(part);
}

const badlyCut = (axis: 'x' | 'y', parts: number) =>
  fail({
    model: 'mesh',
    reason: `The line of symmetry in ${axis} leaves ${parts} parts of the section; it has to leave one.`,
  });

/** A row of vertices that misses its line by a hair would leave a gap there for metal to leak through. */
function settledOn({ vertices }: Outline, axis: 'x' | 'y', at: number): Outline {
  const near = nearness * extentOf(vertices);
  return {
    vertices: vertices.map((vertex) =>
      Math.abs(vertex[axis] - at) < near ? { ...vertex, [axis]: at } : vertex,
    ),
  };
}

function extentOf(vertices: Outline['vertices']): number {
  const [xs, ys] = [vertices.map(({ x }) => x), vertices.map(({ y }) => y)];
  return Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys);
}
