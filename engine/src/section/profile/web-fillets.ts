import { fail, ok, type Result } from '../../outcome/result.ts';
import type { Point } from '../edges.ts';
import type { Vertex } from '../outline.ts';
import { mm } from './crown.ts';

/**
 * From a fishing line to the upright web: one or two fillets and the web arc, all tangent, all hollow. Drawn for the
 * head; the foot is the same seen in a mirror that lies level.
 *
 *      fishing line  y = onAxis + x / slope
 *        ╲___
 *            ╲  r1
 *             │ r2 ── meets the web arc at meetsAt
 *             │ web arc, upright at touchesAt, x = halfWeb
 */
export interface WebJoint {
  readonly part: 'head' | 'foot';
  readonly onAxis: number;
  readonly slope: number;
  readonly radii: readonly number[];
  readonly meetsAt: number | undefined;
  readonly halfWeb: number;
  readonly webRadius: number;
  readonly touchesAt: number;
}

/** Vertices from the tangent point on the fishing line down to the upright web. */
export function webFillets(joint: WebJoint): Result<Vertex[]> {
  const { halfWeb, webRadius, touchesAt, radii } = joint;
  const web: Circle = { x: halfWeb + webRadius, y: touchesAt, radius: webRadius };
  const inner = radii.length > 1 ? touching(joint, web) : ok(web);
  if (!inner.ok) return inner;
  const outer = tangentToLine(joint, inner.value, radii[0]);
  if (!outer.ok) return outer;
  const circles = radii.length > 1 ? [outer.value, inner.value, web] : [outer.value, web];
  const points = [footOnLine(joint, outer.value), ...joints(circles), { x: halfWeb, y: touchesAt }];
  if (points.some(({ y }, i) => i > 0 && !(y < points[i - 1].y))) return doesNotFit(joint, radii[0]);
  return ok(
    points.map((point, i) => ({
      ...point,
      bulge: i < circles.length ? bulgeOf(circles[i], point, points[i + 1]) : 0,
    })),
  );
}

interface Circle extends Point {
  readonly radius: number;
}

/** The second fillet: touches the web arc from inside at the height given. */
function touching({ meetsAt, radii, part }: WebJoint, web: Circle): Result<Circle> {
  const rise = ((meetsAt ?? Number.NaN) - web.y) / web.radius;
  const radius = radii[1];
  if (!(rise > 0 && rise < 1 && radius < web.radius)) {
    return fail({
      model: 'profile',
      reason: `the second ${part} fillet (R ${mm(radius)}) cannot meet the web arc at the height given`,
    });
  }
  const [leanX, leanY] = [Math.sqrt(1 - rise * rise), rise];
  const reach = web.radius - radius;
  return ok({ x: web.x - leanX * reach, y: web.y + leanY * reach, radius });
}

/** The fillet below the fishing line that touches a larger circle from inside; of the two, the one at the web. */
function tangentToLine(joint: WebJoint, inside: Circle, radius: number): Result<Circle> {
  const { slope, onAxis } = joint;
  const norm = Math.hypot(slope, 1);
  const [alongX, alongY] = [slope / norm, 1 / norm];
  const [startX, startY] = [radius * alongY, onAxis - radius * alongX];
  const [dx, dy] = [inside.x - startX, inside.y - startY];
  const [along, off] = [dx * alongX + dy * alongY, dy * alongX - dx * alongY];
  const reach = inside.radius - radius;
  const squared = reach * reach - off * off;
  if (!(reach > 0 && squared >= 0)) return doesNotFit(joint, radius);
  const distance = along - Math.sqrt(squared);
  return ok({ x: startX + distance * alongX, y: startY + distance * alongY, radius });
}

const doesNotFit = ({ part }: WebJoint, radius: number) =>
  fail({
    model: 'profile',
    reason: `the ${part} fillet (R ${mm(radius)}) cannot touch the ${part}'s fishing line and the web at once`,
  });

/** Where the fillet touches the fishing line: straight above its centre, across the line. */
function footOnLine({ slope }: WebJoint, { x, y, radius }: Circle): Point {
  const norm = Math.hypot(slope, 1);
  return { x: x - radius / norm, y: y + (radius * slope) / norm };
}

/** Each circle touches the next from inside: on the line of their centres, beyond the smaller one. */
const joints = (circles: readonly Circle[]): Point[] =>
  circles.slice(1).map((large, i) => {
    const small = circles[i];
    const [dx, dy] = [small.x - large.x, small.y - large.y];
    const share = large.radius / Math.hypot(dx, dy);
    return { x: large.x + dx * share, y: large.y + dy * share };
  });

/** Hollow arcs turn left on the way down. */
function bulgeOf({ x, y }: Circle, from: Point, to: Point): number {
  const [ax, ay, bx, by] = [from.x - x, from.y - y, to.x - x, to.y - y];
  return Math.tan(Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / 4);
}
