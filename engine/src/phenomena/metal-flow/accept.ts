import { fail, ok, type Result } from '../../outcome/result.ts';
import type { Bite } from './bite.ts';
import type { LevelOutcome, Settling } from './march-until.ts';
import type { March } from './marched.ts';
import { quadArea } from './quad-mesh.ts';
import { largestRadius } from './roll-surface.ts';

/** Beyond these a pass is no answer. Energy: solutions far off had settled by every other measure. */
const most = {
  flowChange: 5e-3,
  pullChange: 0.1,
  areaChange: 2e-3,
  warpingChange: 0.015,
  energy: 0.03,
  overSheared: 0.01,
};

/** The last march of the finest level when it may be believed; else why not, in words of the mill. */
export function accepted(
  bite: Bite,
  { last, broken, cancelled }: LevelOutcome,
  marches: number,
): Result<Settling> {
  const no = (reason: string, residual?: number) =>
    fail({
      model: 'metal flow',
      reason,
      iterations: marches,
      ...(residual === undefined ? {} : { residual }),
    });
  if (cancelled) return no('broken off before it had settled');
  if (broken) return no(`${broken.reason} ${placeOf(bite, broken.distance)}: ${tooMuch}`);
  if (!last) return no('no march came to its end');
  if (last.balanced.skids)
    return no(skidding(bite), Math.abs(last.balanced.leftOver) / (bite.scales.stress * bite.scales.area));
  const { flowChange, pullChange, areaChange, warpingChange, energy, march } = last;
  if (march.unsettled > 0)
    return no(`${march.unsettled} of ${march.steps.length} slices do not settle`, march.residual);
  const residual = Math.max(
    flowChange / most.flowChange,
    pullChange / most.pullChange,
    areaChange / most.areaChange,
    warpingChange / most.warpingChange,
  );
  if (!(residual <= 1)) return no(unsettled(last), residual);
  if (!(Math.abs(energy.error) <= most.energy)) {
    return no(
      `power of the rolls and power used differ by ${percent(energy.error)}, more than ${percent(most.energy)}`,
      Math.abs(energy.error),
    );
  }
  const over = overSheared(bite, march);
  if (!(over <= most.overSheared)) {
    return no(`the axial shear is more than the steel can bear in ${percent(over)} of the bite`, over);
  }
  return ok(last);
}

/** Share of the bite's volume in which the axial shear exceeds the shear yield stress: single corners may. */
function overSheared({ grid }: Bite, { sections, steps }: March): number {
  let [over, all] = [0, 0];
  steps.forEach(({ shearShare, length }, i) => {
    for (let k = 0; k < grid.elements; k++) {
      const volume = quadArea(grid.quads, sections[i].xy, k) * length;
      all += volume;
      if (shearShare[k] > 1) over += volume;
    }
  });
  return over / all;
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const placeOf = ({ length }: Bite, distance: number): string =>
  `${(1000 * Math.max(0, distance)).toFixed(0)} mm before the exit plane, the bite being ${(1000 * length).toFixed(0)} mm long`;

const tooMuch = 'too much is asked of one pass, or the bar does not fit its groove';

const unsettled = ({ flowChange, pullChange, areaChange, warpingChange }: Settling): string =>
  `the pass does not settle: speed still changes by ${percent(flowChange)}, over the section by ${percent(warpingChange)}, pull by ${percent(pullChange)} of the flow stress, section by ${percent(areaChange)}`;

/** tan of the bite angle against friction tells a roller what is wrong. */
function skidding({ rolls, length }: Bite): string {
  const driven = rolls.filter(({ roll }) => roll.turning !== 'idle');
  const friction = Math.max(...driven.map(({ roll }) => roll.friction));
  const radius = Math.max(...driven.map(largestRadius));
  const angle = (Math.asin(Math.min(1, length / radius)) * 180) / Math.PI;
  const limit = (Math.atan(friction) * 180) / Math.PI;
  return `the rolls skid and do not draw the bar through: bite angle about ${angle.toFixed(1)}°, friction angle ${limit.toFixed(1)}°`;
}
