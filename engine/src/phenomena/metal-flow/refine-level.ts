import type { Field } from '../../outcome/field.ts';
import { type Bite, copySlice, type Level, levelOf } from './bite.ts';
import { largestRadius, nearestOnRoll, nowhere } from './roll-surface.ts';

/**
 * A level with more slices that starts from what the coarser one found, by place along the bite. Slices are taken over
 * as they are: with their velocities the section takes the same path, and touches where it touched.
 */
export function refinedLevel(bite: Bite, coarse: Level, slices: number, ahead: number): Level {
  const fine = levelOf(bite, slices, ahead);
  fine.flow = coarse.flow;
  fine.turning.set(coarse.turning);
  for (let i = 0; i < fine.pull.length; i++)
    fine.pull[i] = valueAt(coarse.distance, coarse.pull, fine.distance[i]);
  fine.warping.forEach((row, m) => {
    for (let i = 0; i < row.length; i++)
      row[i] = valueAt(coarse.distance, coarse.warping[m], fine.distance[i]);
  });
  middlesOf(fine.distance).forEach((place, i) => {
    copySlice(coarse.slices[sliceAt(coarse, place)], fine.slices[i]);
  });
  return fine;
}

const middlesOf = (distance: Field): number[] =>
  Array.from({ length: distance.length - 1 }, (_, i) => (distance[i] + distance[i + 1]) / 2);

function sliceAt({ distance, slices }: Level, place: number): number {
  let i = 0;
  while (i + 1 < slices.length && distance[i + 1] > place) i++;
  return i;
}

/** Linear between falling places. */
function valueAt(places: Field, values: Field, place: number): number {
  let low = 0;
  while (low + 2 < places.length && places[low + 1] > place) low++;
  const beyond = (places[low] - place) / (places[low] - places[low + 1]);
  const share = Math.min(1, Math.max(0, beyond));
  return (1 - share) * values[low] + share * values[low + 1];
}

/** Flow rate and idle rolls to begin with: what stands in the rolls' way goes three quarters into length. */
export function firstGuess(bite: Bite, level: Level): void {
  const { grid, rolls, problem, scales } = bite;
  const { xy } = problem.mesh;
  const nearest = nowhere();
  const { node, before, after } = grid.skin;
  let [removed, speed, weight] = [0, 0, 0];
  for (const { profile, across, roll } of rolls) {
    for (let s = 0; s < node.length; s++) {
      const at = 2 * node[s];
      nearestOnRoll(profile, xy[at], xy[at + 1], nearest);
      if (!(nearest.gap < 0)) continue;
      const width =
        Math.hypot(xy[2 * after[s]] - xy[2 * before[s]], xy[2 * after[s] + 1] - xy[2 * before[s] + 1]) / 2;
      removed -= nearest.gap * width;
      if (roll.turning === 'idle') continue;
      speed -=
        roll.turning * Math.abs(roll.axis - (across === 1 ? nearest.y : nearest.x)) * nearest.gap * width;
      weight -= nearest.gap * width;
    }
  }
  const surface = weight > 0 ? speed / weight : scales.speed;
  level.flow = Math.max(0.4, 1 - (0.75 * removed) / scales.area) * scales.area * surface;
  rolls.forEach((each, r) => {
    if (each.roll.turning === 'idle') level.turning[r] = surface / largestRadius(each);
  });
}
