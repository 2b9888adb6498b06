import type { FlowRoll, Side } from '../../../phenomena/metal-flow/problem.ts';
import { edgesOfPath, pointAt } from '../../../section/edges.ts';
import { chordsFor } from '../../../section/flatten.ts';
import type { Path } from '../../../section/outline.ts';
import type { Groove } from '../groove/groove.ts';
import type { Roll } from '../groove/rolls.ts';

/** Farthest that the chords of a roll's arcs leave them, m. */
const sagitta = 2e-5;

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
      profile: pointsAlong(family === 'flat' && !idle ? drawnOn(profile) : profile),
      turning: idle ? 'idle' : turning,
      friction,
    }));
}

/** Points x, y of a path in order, m; arcs as chords. */
export function pointsAlong(path: Path): Float64Array {
  const points = edgesOfPath(path).flatMap((edge) => {
    const chords = chordsFor(edge, sagitta);
    return Array.from({ length: chords }, (_, k) => pointAt(edge, k / chords));
  });
  const last = path.vertices[path.vertices.length - 1];
  return Float64Array.from([...points, last].flatMap(({ x, y }) => [x, y]));
}

function drawnOn({ vertices }: Path): Path {
  const [first, last] = [vertices[0], vertices[vertices.length - 1]];
  const ends = [first.x - barrelReach, last.x + barrelReach];
  return {
    vertices: [{ ...first, x: ends[0] }, ...vertices.slice(1, -1), { ...last, x: ends[1] }],
  };
}
