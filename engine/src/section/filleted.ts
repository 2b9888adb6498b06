import type { Vertex } from './outline.ts';

/** A corner of a drawing before rounding, m. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * Lines through the corners with every corner rounded by a tangent arc of its radius; radius 0 stays sharp.
 * The ends of an open chain are never rounded. Where a fillet does not fit, its lines run backwards:
 * ask `filletThatDoesNotFit` first when the radii come from a person.
 */
export function filleted(corners: readonly Corner[], closed: boolean): Vertex[] {
  return corners.flatMap((corner, i) => {
    const rounding = roundingAt(corners, i, closed);
    if (!rounding || rounding.length === 0) return [{ x: corner.x, y: corner.y, bulge: 0 }];
    const { inX, inY, outX, outY, length, bulge } = rounding;
    return [
      { x: corner.x - inX * length, y: corner.y - inY * length, bulge },
      { x: corner.x + outX * length, y: corner.y + outY * length, bulge: 0 },
    ];
  });
}

/** Number of the first corner whose fillet reaches past its neighbour's; undefined when all fit. */
export function filletThatDoesNotFit(corners: readonly Corner[], closed: boolean): number | undefined {
  const lengths = corners.map((_, i) => roundingAt(corners, i, closed)?.length ?? 0);
  const last = closed ? corners.length : corners.length - 1;
  for (let i = 0; i < last; i++) {
    const j = (i + 1) % corners.length;
    const side = Math.hypot(corners[j].x - corners[i].x, corners[j].y - corners[i].y);
    if (!(lengths[i] + lengths[j] <= side * (1 + 1e-12))) return lengths[i] >= lengths[j] ? i : j;
  }
  return undefined;
}

/** Unit directions in and out of a corner, distance from the corner to the tangent points, bulge of the arc. */
function roundingAt(corners: readonly Corner[], i: number, closed: boolean) {
  const n = corners.length;
  if (!closed && (i === 0 || i === n - 1)) return undefined;
  const [before, at, after] = [corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]];
  const [inX, inY] = direction(before, at);
  const [outX, outY] = direction(at, after);
  const turn = Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
  const length = at.radius * Math.abs(Math.tan(turn / 2));
  return { inX, inY, outX, outY, length, bulge: Math.tan(turn / 4) };
}

function direction(from: Corner, to: Corner): readonly [number, number] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return [(to.x - from.x) / length, (to.y - from.y) / length];
}
