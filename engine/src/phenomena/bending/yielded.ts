import type { BendingSection } from './bend.ts';
import type { ColdSection } from './cold-section.ts';
import { fibreSums } from './fibres.ts';
import { passage, run } from './passage.ts';
import type { RollerLine } from './rollers.ts';
import type { Straightened } from './straighten.ts';

/** How far the section is past first yield at the points of a machine, and the work of bending. */
export interface Yielded {
  /** Depth from the head (right side) and from the foot (left side) over the section's height (width). */
  readonly upper: Float64Array;
  readonly lower: Float64Array;
  /** Both together: share of the height (width) that is past first yield from the edges inward. */
  readonly share: Float64Array;
  /** N·m at the points. */
  readonly moment: Float64Array;
  /** ∫ M dκ through the machine: J per metre of bar that stay in it as heat and stored stress. */
  readonly work: number;
}

/** Runs the solved case once more and looks at every point. */
export function yieldedAlong(section: ColdSection, line: RollerLine, solved: Straightened): Yielded {
  const bar = passage(section, line);
  const points = bar.curvature.length;
  const rows = { upper: row(points), lower: row(points), share: row(points), moment: row(points) };
  run(bar, Float64Array.from(solved.moment), 0, bar.curvature, true, (point, moment) => {
    rows.moment[point] = moment;
    look(bar.section, line, point, rows);
  });
  let work = 0;
  for (let p = 1; p < points; p++) {
    const mean = (rows.moment[p - 1] + rows.moment[p]) / 2;
    work += mean * (bar.curvature[p] - bar.curvature[p - 1]);
  }
  return { ...rows, work };
}

const row = (length: number) => new Float64Array(length);

function look(
  { fibres, law, slip }: BendingSection,
  { plane }: RollerLine,
  point: number,
  rows: Pick<Yielded, 'upper' | 'lower' | 'share'>,
): void {
  const along = plane === 'height' ? fibres.y : fibres.x;
  const sums = fibreSums(fibres);
  const [top, bottom] = plane === 'height' ? [sums.up, -sums.down] : [sums.right, -sums.left];
  const sliders = law.bound.length;
  let [highest, lowest] = [bottom, top];
  for (let i = 0; i < along.length; i++) {
    if (Math.abs(slip[i * sliders]) >= law.bound[0] * (1 - 1e-12)) continue;
    highest = Math.max(highest, along[i]);
    lowest = Math.min(lowest, along[i]);
  }
  rows.upper[point] = Math.max(0, (top - highest) / (top - bottom));
  rows.lower[point] = Math.max(0, (lowest - bottom) / (top - bottom));
  rows.share[point] = Math.min(1, rows.upper[point] + rows.lower[point]);
}
