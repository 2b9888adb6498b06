import { type CarbonLoss, depthTo, furtherLoss, untouched } from '../../steel/decarburisation.ts';
import { metalLoss, metalRecession, scaleLaw } from '../../steel/oxidation.ts';
import type { HeatingCurves } from './record.ts';

/** What the skin lost on the way to the door, m and kg/m². */
export interface SkinLoss {
  readonly scale: number;
  readonly metal: number;
  readonly decarburised: number;
}

/** Below this the skin neither scales nor loses carbon to speak of; °C. */
const idleBelow = 600;

/** Scale and carbon loss along the curve of the mean surface temperature. `factor` is scale growth against that in air. */
export function skinLoss({ time, surface }: HeatingCurves, factor: number): SkinLoss {
  const law = scaleLaw(factor);
  let scale = 0;
  let carbon: CarbonLoss = untouched;
  for (let k = 1; k < time.length; k++) {
    const T = (surface[k - 1] + surface[k]) / 2;
    const dt = time[k] - time[k - 1];
    if (T < idleBelow || dt === 0) continue;
    scale = law.grown(scale, T, dt);
    carbon = furtherLoss(carbon, T, dt, metalRecession(scale));
  }
  return { scale, metal: metalLoss(scale), decarburised: depthTo(carbon) };
}
