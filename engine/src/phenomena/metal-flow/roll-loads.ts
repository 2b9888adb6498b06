import type { Bite } from './bite.ts';
import { powersAt } from './energy.ts';
import type { Settling } from './march-until.ts';
import type { March } from './marched.ts';
import type { Symmetry } from './quad-mesh.ts';
import type { RollSurface } from './roll-surface.ts';
import type { RollLoads } from './solution.ts';
import { meanSlip } from './speed-profile.ts';

/** Loads of every roll, of the whole section, at the speeds of the balance. */
export function rollLoads(bite: Bite, { march, balanced, pull }: Settling): RollLoads[] {
  const powers = powersAt(march, balanced, pull).rolls;
  return bite.rolls.map((surface, r) => {
    const times = timesOnWhole(surface, bite.problem.mesh.symmetry);
    const power = times * powers[r];
    const turning = balanced.turning[r];
    const neutral = neutralLine(march, bite.length, r);
    return {
      name: surface.roll.name,
      ...pressed(surface, march, r, times, bite.problem.mesh.symmetry),
      torque: turning === 0 ? 0 : power / turning,
      power,
      turning,
      ...(neutral === undefined ? {} : { neutralLine: neutral }),
    };
  });
}

/** A roll across a line of symmetry touches on both sides of it. */
const timesOnWhole = ({ across }: RollSurface, { x, y }: Symmetry): number =>
  (across === 1 ? x : y) === undefined ? 1 : 2;

function pressed(
  { across, beyond }: RollSurface,
  { steps }: March,
  r: number,
  times: number,
  symmetry: Symmetry,
) {
  const force = [0, 0];
  let [area, length, pressure, highest] = [0, 0, 0, 0];
  for (const { touching, length: own } of steps) {
    let isTouching = false;
    for (let c = 0; c < touching.count; c++) {
      if (touching.roll[c] !== r) continue;
      isTouching = true;
      force[0] += own * (touching.pressure[c] * touching.nx[c] + touching.pushX[c]);
      force[1] += own * (touching.pressure[c] * touching.ny[c] + touching.pushY[c]);
      area += own * touching.share[c];
      pressure += own * touching.pressure[c];
      highest = Math.max(highest, touching.pressure[c] / touching.share[c]);
    }
    if (isTouching) length += own;
  }
  const isMirrored = (across === 1 ? symmetry.x : symmetry.y) !== undefined;
  return {
    force: beyond * times * force[across],
    lateral: isMirrored ? 0 : force[1 - across],
    contactArea: times * area,
    contactLength: length,
    meanPressure: area > 0 ? pressure / area : 0,
    highestPressure: highest,
  };
}

/** m before the exit plane where the mean slip of a roll's contacts changes its sign. */
function neutralLine({ steps }: March, bite: number, r: number): number | undefined {
  let [place, before] = [0, 0];
  let at = steps.reduce((sum, { length }) => sum + length, 0);
  for (const { touching, length } of steps) {
    const middle = at - length / 2;
    at -= length;
    const slip = meanSlip(touching, r);
    if (slip === undefined) continue;
    if (before < 0 && slip >= 0) {
      const share = before / (before - slip);
      return Math.min(bite, place + share * (middle - place));
    }
    [place, before] = [middle, slip];
  }
  return undefined;
}
