import { fail, ok, type Result } from '../../outcome/result.ts';
import type { ColdSection, Plane } from '../../phenomena/bending/cold-section.ts';
import { layered } from '../../phenomena/bending/layers.ts';
import { type RollerLine, rollerLine } from '../../phenomena/bending/rollers.ts';
import { curvatureOut, type Straightened, straighten } from '../../phenomena/bending/straighten.ts';
import { yieldedAlong } from '../../phenomena/bending/yielded.ts';
import type { StraightenerMachine } from './equipment.ts';

/** What one machine is asked for. Curvatures 1/m in its plane. */
export interface OffsetWish {
  readonly plane: Plane;
  readonly machine: StraightenerMachine;
  /** Camber that comes in varies by ± this around that of the section. */
  readonly spread: number;
  /** Curvature that should leave from the middle of the spread. */
  readonly target: number;
  readonly mostPlastified: number;
}

/** Offsets of rollers 2, 4, 6 … that were found, m. */
export interface OffsetsFound {
  readonly taper: Taper;
  readonly offsets: readonly number[];
  /** Curvature that leaves at the low end, the middle and the high end of the spread, 1/m. */
  readonly out: readonly [number, number, number];
  /** N, and share of the depth past first yield: most at any point. */
  readonly force: number;
  readonly plastified: number;
  readonly solves: number;
}

/**
 * Offsets as a taper d = d_last + (d_first − d_last)(1 − f)^β, f from 0 at roller 2 to 1 at the last even one. For each
 * first offset and β the last offset follows by a secant, so that the middle of the spread leaves as asked; the taper
 * with the narrowest spread within force and plastified share wins. Searched on layers, the last offset polished on the
 * full section. Fails when no taper does it.
 */
export function searchOffsets(section: ColdSection, wish: OffsetWish): Result<OffsetsFound> {
  const search = { section, wish, solves: 0 };
  let best: Candidate | undefined;
  for (const first of firstOffsets(section, wish)) {
    for (const beta of [0.6, 1, 1.5, 2.2]) {
      const found = levelled(search, { first, beta }, true);
      if (found && withinLimits(found, wish) && (!best || found.range < best.range)) best = found;
    }
  }
  const polished = best && levelled(search, best.taper, false, best.last);
  if (!polished) {
    return fail({
      model: 'straightener offsets',
      reason: `No taper of the ${wish.plane} machine leaves the bar as asked within force and plastified share.`,
      residual: 1,
    });
  }
  return ok(reported(polished, search.solves));
}

interface Search {
  readonly section: ColdSection;
  readonly wish: OffsetWish;
  solves: number;
}

/** Offset of roller 2, m, and the exponent of the taper. */
export interface Taper {
  readonly first: number;
  readonly beta: number;
}

interface Candidate {
  readonly taper: Taper;
  readonly last: number;
  readonly offsets: readonly number[];
  readonly runs: readonly [Straightened, Straightened, Straightened];
  readonly range: number;
  readonly force: number;
  readonly plastified: number;
}

/** From one to four times the offset of first yield in a long row, κ p² / 6. */
function firstOffsets({ fibres, law }: ColdSection, { plane, machine }: OffsetWish): number[] {
  const along = plane === 'height' ? fibres.y : fibres.x;
  const reach = Array.from(along).reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  const atYield = ((law.bound[0] / reach) * machine.pitch ** 2) / 6;
  return [1.5, 2, 2.5, 3, 3.5, 4, 4.5].map((times) => times * atYield);
}

/** The taper with the last offset at which the middle leaves as asked, and both ends of the spread with it. */
function levelled(
  search: Search,
  taper: Taper,
  coarse: boolean,
  near = 0.15 * taper.first,
): Candidate | undefined {
  const { wish } = search;
  const at = (last: number, close?: Straightened) => solve(search, taper, last, 0, coarse, close);
  let [a, b] = [near, near * 1.1 + 1e-5];
  let low = at(a);
  let high = low && at(b, low);
  for (let step = 0; low && high && step < 8; step++) {
    const miss = curvatureOut(high) - wish.target;
    if (Math.abs(miss) < (coarse ? 5e-6 : 1e-6)) return spreadOf(search, taper, b, coarse, high);
    const slope = (curvatureOut(high) - curvatureOut(low)) / (b - a);
    const next = b - miss / slope;
    if (!(Math.abs(next) < 1.2 * Math.abs(taper.first))) return undefined;
    [a, b] = [b, next];
    low = high;
    high = at(b, high);
  }
  return undefined;
}

function spreadOf(
  search: Search,
  taper: Taper,
  last: number,
  coarse: boolean,
  middle: Straightened,
): Candidate | undefined {
  const { wish, section } = search;
  const low = solve(search, taper, last, -wish.spread, coarse, middle);
  const high = solve(search, taper, last, wish.spread, coarse, middle);
  if (!low || !high) return undefined;
  const offsets = taperOffsets(wish, taper, last);
  const out = [low, middle, high].map(curvatureOut);
  return {
    taper,
    last,
    offsets,
    runs: [low, middle, high],
    range: Math.max(...out) - Math.min(...out),
    force: Math.max(...[low, middle, high].flatMap(({ press }) => Array.from(press))),
    plastified: mostPlastified(
      coarse ? layered(section, wish.plane) : section,
      lineOf(wish, offsets),
      middle,
    ),
  };
}

const withinLimits = ({ force, plastified }: Candidate, wish: OffsetWish): boolean =>
  force <= 0.9 * wish.machine.force && plastified <= wish.mostPlastified;

const mostPlastified = (section: ColdSection, line: RollerLine, run: Straightened): number =>
  Math.max(...yieldedAlong(section, line, run).share);

function solve(
  search: Search,
  taper: Taper,
  last: number,
  camber: number,
  coarse: boolean,
  near?: Straightened,
): Straightened | undefined {
  const { wish, section } = search;
  const [mean, height, side] = section.strain;
  const strain: [number, number, number] =
    wish.plane === 'height' ? [mean, height + camber, side] : [mean, height, side + camber];
  search.solves++;
  const run = straighten({ ...section, strain }, lineOf(wish, taperOffsets(wish, taper, last)), {
    coarse,
    near,
  });
  return run.ok ? run.value : undefined;
}

function taperOffsets({ machine }: OffsetWish, { first, beta }: Taper, last: number): number[] {
  const count = Math.floor(machine.rollers / 2);
  return Array.from({ length: count }, (_, i) => last + (first - last) * (1 - i / (count - 1)) ** beta);
}

export const lineOf = (
  { plane, machine }: Pick<OffsetWish, 'plane' | 'machine'>,
  offsets: readonly number[],
): RollerLine => rollerLine(plane, machine.rollers, machine.pitch, offsets);

/** The same taper levelled again to a new target, on the full section. */
export function relevelled(
  section: ColdSection,
  wish: OffsetWish,
  before: OffsetsFound,
): Result<OffsetsFound> {
  const search = { section, wish, solves: 0 };
  const found = levelled(search, before.taper, false, before.offsets[before.offsets.length - 1]);
  if (!found) {
    return fail({
      model: 'straightener offsets',
      reason: 'The taper could not be levelled again.',
      residual: 1,
    });
  }
  return ok(reported(found, search.solves));
}

const reported = ({ taper, offsets, runs, force, plastified }: Candidate, solves: number): OffsetsFound => ({
  taper,
  offsets,
  out: [curvatureOut(runs[0]), curvatureOut(runs[1]), curvatureOut(runs[2])],
  force,
  plastified,
  solves,
});
