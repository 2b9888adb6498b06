import type { Field } from '../../../outcome/field.ts';
import type { Symmetry } from '../quad-mesh.ts';

/** Points of a whole section mirrored into the part that is computed, and from which side each of them came. */
export interface Folded {
  readonly xy: Float64Array;
  /** Per coordinate: 1 from the computed side, -1 from the other one, 0 on the line itself, where the point stays. */
  readonly side: Int8Array;
}

export function folded(points: Field, symmetry: Symmetry): Folded {
  const xy = Float64Array.from(points);
  const side = new Int8Array(xy.length).fill(1);
  for (let at = 0; at < xy.length; at++) {
    const line = lineFor(symmetry, at);
    if (line === undefined) continue;
    side[at] = Math.sign(settled(xy[at] - line, line));
    xy[at] = line + Math.abs(xy[at] - line) * Math.abs(side[at]);
  }
  return { xy, side };
}

/** Back to the sides they came from; points of the line stand on it to the last digit. */
export const unfolded = ({ xy, side }: Folded, symmetry: Symmetry): Float64Array =>
  xy.map((value, at) => {
    const line = lineFor(symmetry, at);
    return line === undefined ? value : line + side[at] * (value - line);
  });

const lineFor = ({ x, y }: Symmetry, at: number): number | undefined => (at % 2 === 0 ? x : y);

/** m: nearer to a line than this is on it. */
const settled = (distance: number, line: number): number =>
  Math.abs(distance) < 1e-12 * (1 + Math.abs(line)) ? 0 : distance;
