import { type BendingSection, bend, bendingSection, restore } from './bend.ts';
import type { ColdSection } from './cold-section.ts';
import { type RollerLine, stepsPerSpan } from './rollers.ts';

/**
 * One run of a section past all rollers, with a copy of its memory kept at each roller so that a trial with another
 * moment there can start from it. Written in place; made once per machine.
 * curvature   1/m at each of the stepsPerSpan points of every span, first point first
 */
export interface Passage {
  readonly section: BendingSection;
  readonly line: RollerLine;
  readonly slipAt: readonly Float64Array[];
  readonly strainAt: readonly Float64Array[];
  readonly curvature: Float64Array;
}

export function passage(section: ColdSection, line: RollerLine): Passage {
  const moving = bendingSection(section);
  const rollers = line.position.length;
  return {
    section: moving,
    line,
    slipAt: Array.from({ length: rollers }, () => Float64Array.from(moving.slip)),
    strainAt: Array.from({ length: rollers }, () => Float64Array.from(moving.strain)),
    curvature: new Float64Array((rollers - 1) * stepsPerSpan + 1).fill(curvatureNow(moving, line)),
  };
}

export const curvatureNow = ({ strain }: BendingSection, { plane }: RollerLine): number =>
  plane === 'height' ? strain[1] : strain[2];

/**
 * Runs the section from roller `from` to the end under moments (N·m) given at the rollers, straight between them.
 * Writes curvatures to `into`. `keep`: memories at the rollers are those of this run from now on. `watch` is called at
 * each point. Returns false when a section found no equilibrium.
 */
export function run(
  { section, line, slipAt, strainAt }: Passage,
  moment: Float64Array,
  from: number,
  into: Float64Array,
  keep: boolean,
  watch?: (point: number, moment: number) => void,
): boolean {
  restore(section, slipAt[from], strainAt[from]);
  watch?.(from * stepsPerSpan, moment[from]);
  for (let span = from; span < line.position.length - 1; span++) {
    for (let j = 1; j <= stepsPerSpan; j++) {
      const m = moment[span] + ((moment[span + 1] - moment[span]) * j) / stepsPerSpan;
      const iterations = line.plane === 'height' ? bend(section, m, 0) : bend(section, 0, m);
      if (iterations < 0) return false;
      into[span * stepsPerSpan + j] = curvatureNow(section, line);
      watch?.(span * stepsPerSpan + j, m);
    }
    if (!keep) continue;
    slipAt[span + 1].set(section.slip);
    strainAt[span + 1].set(section.strain);
  }
  return true;
}
