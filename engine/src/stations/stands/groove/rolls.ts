import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { Path } from '../../../section/outline.ts';
import { outlineOf, profileNamed } from '../../../section/profile-library.ts';
import { finisherHeadRoll, finisherProfile, type HotRail, hotRail } from './finisher.ts';
import type { FreeGroove, Groove } from './groove.ts';
import { boxProfile, flatProfile, formerProfile, freeProfile } from './two-high.ts';
import { footRollProfile, headRollProfile, universalProfile } from './universal.ts';

/**
 * One roll at the exit plane. Its section at a distance X before that plane follows from turning the profile about the
 * axis: c(X) = a − sgn √((a − c)² − X²) with c = y for horizontal rolls and c = x for vertical ones.
 */
export interface Roll {
  readonly name: 'top' | 'bottom' | 'foot roll' | 'head roll';
  /** Turned by the bar, not by a motor. */
  readonly idle: boolean;
  /** m: y of a horizontal roll's axis, x of a vertical one's. */
  readonly axis: number;
  /** Horizontal: from left to right. Vertical: from below to above. m. */
  readonly profile: Path;
}

/** Where the rolls are set: m, clear gap and the faces of the vertical rolls on the axis. */
export interface RollSetting {
  readonly gap: number;
  readonly footRoll?: number;
  readonly headRoll?: number;
}

/** Diameters over collars, barrel or web faces; of vertical rolls over the face. m. */
export interface RollDiameters {
  readonly horizontal: number;
  readonly vertical: number;
}

/** A groove with its rolls set. */
export interface SetRolls {
  readonly rolls: readonly Roll[];
  /** Top roll, m. */
  readonly top: Path;
  /** x of the vertical rolls' faces on the axis, where there are such rolls. */
  readonly footFace?: number;
  readonly headFace?: number;
  readonly head?: Path;
  /** A finisher's rail. */
  readonly rail?: HotRail;
}

/** The rolls of a groove at a setting; a setting that differs from the drawing moves the rolls, not their shape. */
export function rollsOf(groove: Groove, setting: RollSetting, diameters: RollDiameters): Result<SetRolls> {
  const drawn = drawing(groove);
  if (!drawn.ok) return drawn;
  const { gap, footRoll, headRoll, rail } = drawn.value;
  const top = raised(drawn.value.top, (setting.gap - gap) / 2);
  const footFace = footRoll === undefined ? undefined : (setting.footRoll ?? footRoll);
  const headFace = headRoll === undefined ? undefined : (setting.headRoll ?? headRoll);
  const head = headFace === undefined ? undefined : headProfile(groove, headFace, rail);
  const axis = (diameters.horizontal + setting.gap) / 2;
  const rolls: Roll[] = [
    { name: 'top', idle: false, axis, profile: top },
    { name: 'bottom', idle: false, axis: -axis, profile: below(top) },
  ];
  const radius = diameters.vertical / 2;
  if (footFace !== undefined) {
    const profile = footRollProfile(footFace, edgeOf(groove));
    rolls.push({ name: 'foot roll', idle: true, axis: footFace - radius, profile });
  }
  if (headFace !== undefined && head) {
    rolls.push({ name: 'head roll', idle: true, axis: headFace + radius, profile: head });
  }
  return ok({
    rolls,
    top,
    ...(footFace === undefined ? {} : { footFace }),
    ...(headFace === undefined ? {} : { headFace }),
    ...(head ? { head } : {}),
    ...(rail ? { rail } : {}),
  });
}

/** Radius of a roll at a point of its profile, m. */
export const radiusAt = ({ name, axis }: Roll, x: number, y: number): number =>
  Math.abs(axis - (name === 'top' || name === 'bottom' ? y : x));

/** A groove as drawn, at its own gap. */
interface Drawing {
  readonly top: Path;
  readonly gap: number;
  readonly footRoll?: number;
  readonly headRoll?: number;
  readonly rail?: HotRail;
}

function drawing(groove: Groove): Result<Drawing> {
  switch (groove.family) {
    case 'flat':
      return ok({ top: flatProfile(groove), gap: groove.gap });
    case 'box':
      return ok({ top: boxProfile(groove), gap: groove.gap });
    case 'former':
      return ok({ top: formerProfile(groove), gap: groove.gap });
    case 'universal':
      return ok({ ...groove, top: universalProfile(groove) });
    case 'finisher': {
      const profile = profileNamed(groove.profile);
      if (!profile)
        return fail({ model: 'groove', reason: `profile ${groove.profile} is not in the library` });
      const cold = outlineOf(profile);
      if (!cold.ok) return cold;
      const rail = hotRail(cold.value, groove.hotFactor);
      if (!rail.ok) return rail;
      const top = finisherProfile(groove, rail.value);
      const gap = 2 * Math.min(...top.vertices.map(({ y }) => y));
      const crown = rail.value.half.vertices[rail.value.half.vertices.length - 1].x;
      return ok({ top, gap, footRoll: 0, headRoll: crown + groove.crownAllowance, rail: rail.value });
    }
    case 'free':
      return freeDrawing(groove);
  }
}

function freeDrawing(groove: FreeGroove): Result<Drawing> {
  const top = freeProfile(groove);
  if (top.vertices.length < 2)
    return fail({ model: 'groove', reason: `groove ${groove.name} has no points` });
  const { gap, footRoll, headRoll } = groove;
  return ok({
    top,
    gap,
    ...(footRoll === undefined ? {} : { footRoll }),
    ...(headRoll === undefined ? {} : { headRoll }),
  });
}

function headProfile(groove: Groove, face: number, rail: HotRail | undefined): Path {
  if (groove.family === 'universal') return headRollProfile(groove, face);
  if (groove.family === 'finisher' && rail) return finisherHeadRoll(groove, rail, face);
  return footRollProfile(face, edgeOf(groove));
}

/** Half height to which a plain vertical roll is drawn, m: its barrel stands a little over the horizontal rolls. */
const edgeOf = (groove: Groove): number => ('rollEdge' in groove ? groove.rollEdge + 0.01 : 0.15);

const raised = ({ vertices }: Path, by: number): Path => ({
  vertices: vertices.map(({ x, y, bulge }) => ({ x, y: y + by, bulge })),
});

const below = ({ vertices }: Path): Path => ({
  vertices: vertices.map(({ x, y, bulge }) => ({ x, y: -y, bulge: -bulge })),
});
