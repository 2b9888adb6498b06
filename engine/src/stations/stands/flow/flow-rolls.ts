import type { FlowRoll, Side } from '../../../phenomena/metal-flow/problem.ts';
import { rollProfile } from '../../../phenomena/metal-flow/roll-profile.ts';
import type { Path } from '../../../section/outline.ts';
import type { Groove } from '../groove/groove.ts';
import type { Roll } from '../groove/rolls.ts';

/** How far a plain barrel is drawn on beyond its groove, m: no bar gets past its end. */
const barrelReach = 0.5;

const sideOf: Readonly<Record<Roll['name'], Side>> = {
  top: 'top',
  bottom: 'bottom',
  'foot roll': 'left',
  'head roll': 'right',
};

/**
 * The rolls that bound the half above the pass line: the bottom roll is the top one's image.
 *
 * turning   of the driven rolls, rad/s; vertical rolls turn with the bar.
 */
export function flowRolls(
  rolls: readonly Roll[],
  family: Groove['family'],
  turning: number,
  friction: number,
): FlowRoll[] {
  return rolls
    .filter(({ name }) => name !== 'bottom')
    .map(({ name, idle, axis, profile }) => ({
      name,
      side: sideOf[name],
      axis,
      profile: rollProfile(family === 'flat' && !idle ? drawnOn(profile) : profile),
      turning: idle ? 'idle' : turning,
      friction,
    }));
}

function drawnOn({ vertices }: Path): Path {
  const [first, last] = [vertices[0], vertices[vertices.length - 1]];
  const ends = [first.x - barrelReach, last.x + barrelReach];
  return {
    vertices: [{ ...first, x: ends[0] }, ...vertices.slice(1, -1), { ...last, x: ends[1] }],
  };
}
