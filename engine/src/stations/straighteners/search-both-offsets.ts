import { fail, ok, type Result } from '../../outcome/result.ts';
import type { ColdSection, Plane } from '../../phenomena/bending/cold-section.ts';
import { straighten } from '../../phenomena/bending/straighten.ts';
import type { StraightenersEquipment } from './equipment.ts';
import { lineOf, type OffsetsFound, type OffsetWish, relevelled, searchOffsets } from './search-offsets.ts';

/** Spreads of what comes in, 1/m, and the largest plastified share allowed. */
export interface BothWish {
  readonly heightSpread: number;
  readonly sideSpread: number;
  readonly mostPlastified: number;
}

export interface BothFound {
  readonly height: OffsetsFound;
  readonly side: OffsetsFound;
}

/** Height camber behind both machines that counts as straight, 1/m. */
const straight = 5e-6;

/**
 * Offsets of both machines: bending in the side plane moves the camber of the height plane, so the height machine aims
 * beside straight by what the side machine adds. Two or three rounds; fails when one machine alone fails or when six
 * rounds do not make the bar straight.
 */
export function searchBothOffsets(
  section: ColdSection,
  equipment: StraightenersEquipment,
  wish: BothWish,
): Result<BothFound> {
  const wishes = wishesOf(equipment, wish);
  let height = searchOffsets(section, wishes.height);
  let before: OffsetsFound | undefined;
  let [target, moved, left] = [0, 0, 1];
  for (let round = 0; round < 6; round++) {
    if (!height.ok) return height;
    const behind = behindSide(section, wishes, height.value, before);
    if (!behind.ok) return behind;
    const { side, left: now } = behind.value;
    if (Math.abs(now) < straight) return ok({ height: height.value, side });
    // Of what the target was moved by last time, the side machine carried this share through.
    const carried = before ? (now - left) / moved : 1;
    moved = -now / carried;
    target += moved;
    [left, before] = [now, side];
    height = relevelled(section, { ...wishes.height, target }, height.value);
  }
  return fail({
    model: 'straightener offsets',
    reason: 'The height machine does not find what the side machine adds.',
    residual: Math.abs(left),
  });
}

const wishesOf = (
  { height, side }: StraightenersEquipment,
  { heightSpread, sideSpread, mostPlastified }: BothWish,
): Record<Plane, OffsetWish> => ({
  height: { plane: 'height', machine: height, spread: heightSpread, target: 0, mostPlastified },
  side: { plane: 'side', machine: side, spread: sideSpread, target: 0, mostPlastified },
});

/** Offsets of the side machine for the bar that the height machine leaves, and the height camber behind both, 1/m. */
function behindSide(
  section: ColdSection,
  wishes: Record<Plane, OffsetWish>,
  height: OffsetsFound,
  before: OffsetsFound | undefined,
): Result<{ readonly side: OffsetsFound; readonly left: number }> {
  const between = straighten(section, lineOf(wishes.height, height.offsets));
  if (!between.ok) return between;
  const entering = between.value.section;
  const side = before ? relevelled(entering, wishes.side, before) : searchOffsets(entering, wishes.side);
  if (!side.ok) return side;
  const behind = straighten(entering, lineOf(wishes.side, side.value.offsets));
  return behind.ok ? ok({ side: side.value, left: behind.value.section.strain[1] }) : behind;
}
