import type { Symmetry } from '../../../phenomena/metal-flow/quad-mesh.ts';
import { rollProfile } from '../../../phenomena/metal-flow/roll-profile.ts';
import type { Outline, Path } from '../../../section/outline.ts';
import { symmetryLines } from '../../../section/symmetry.ts';
import type { Roll } from '../groove/rolls.ts';

/** A bar that lies less than this beside the middle of its groove lies in it, m. */
const centred = 1e-6;

/**
 * What has to be computed of a pass: the half above the pass line, or its right half alone where bar and rolls are alike
 * left and right and the bar lies in the middle of the groove.
 */
export function computedLines(outline: Outline, rolls: readonly Roll[]): Symmetry {
  const line = symmetryLines(outline).find((each) => each.line === 'x');
  const top = rolls.find(({ name }) => name === 'top');
  const isAlone = rolls.every(({ idle }) => !idle);
  if (!line || !top || !isAlone || !isMirrored(top.profile, line.at)) return { y: 0 };
  return { x: line.at, y: 0 };
}

/** Whether a roll is its own image in x = at. */
function isMirrored(profile: Path, at: number): boolean {
  const points = rollProfile(profile);
  const n = points.length;
  for (let i = 0; i < n; i += 2) {
    const across = points[i] + points[n - 2 - i] - 2 * at;
    const along = points[i + 1] - points[n - 1 - i];
    if (Math.abs(across) > 2 * centred || Math.abs(along) > centred) return false;
  }
  return true;
}
