import type { Field } from '../../outcome/field.ts';
import { type Bite, type Level, levelOf, type Slice } from './bite.ts';
import { copyContacts } from './contact.ts';
import { largestRadius, nearestOnRoll, nowhere } from './roll-surface.ts';

/** A level with more slices that starts from what the coarser one found, by place along the bite. */
export function refinedLevel(bite: Bite, coarse: Level, slices: number, ahead: number): Level {
  const fine = levelOf(bite, slices, ahead);
  fine.flow = coarse.flow;
  fine.turning.set(coarse.turning);
  for (let i = 0; i < fine.pull.length; i++)
    fine.pull[i] = valueAt(coarse.distance, coarse.pull, fine.distance[i]);
  middlesOf(fine.distance).forEach((place, i) => {
    copyInto(coarse.slices[sliceAt(coarse, place)], fine.slices[i]);
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

/** As it is: with the velocities of the coarse slice the section takes the same path, and touches where it touched. */
function copyInto(from: Slice, out: Slice): void {
  out.velocity.set(from.velocity);
  out.relief.set(from.relief);
  out.hold.set(from.hold);
  out.along = from.along;
  copyContacts(from.memory, out.memory);
  out.isNew = false;
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
