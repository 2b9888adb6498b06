import { type Line, sharesOnLine } from './crossings.ts';
import {
  centre,
  type Edge,
  edgeLength,
  edgesOf,
  nearestShare,
  type Point,
  pointAt,
  radius,
} from './edges.ts';
import type { Outline } from './outline.ts';
import { type Bounds, boundsOf } from './properties.ts';

/** Points closer than this share of the section count as one, m per m. */
const closeness = 1e-9;

/** The first point where an outline crosses or touches itself; undefined when it is simple. Exact on arcs. */
export function selfCrossing(outline: Outline): Point | undefined {
  const edges = edgesOf(outline);
  const boxes = edges.map((edge) => boxAround(edge));
  const within = closeness * edges.reduce((sum, edge) => sum + edgeLength(edge), 0);
  for (let i = 0; i < edges.length; i++) {
    for (let j = i + 1; j < edges.length; j++) {
      if (apart(boxes[i], boxes[j])) continue;
      const meeting = meetings(edges[i], edges[j], within).find(
        (point) => !isJoint(edges, i, j, point, within),
      );
      if (meeting) return meeting;
    }
  }
  return undefined;
}

/** Points that two edges share. Edges that lie on one line or circle report none. */
export function meetings(a: Edge, b: Edge, within: number): Point[] {
  const [first, second] = a.bulge === 0 ? [b, a] : [a, b];
  const line = second.bulge === 0 ? lineAlong(second) : commonChord(first, second);
  if (!line) return [];
  return sharesOnLine(first, line)
    .map((share) => pointAt(first, share))
    .filter(({ x, y }) => {
      const near = pointAt(second, nearestShare(second, x, y));
      return Math.hypot(near.x - x, near.y - y) <= within;
    });
}

const lineAlong = ({ mx, my, ux, uy }: Edge): Line => ({ nx: -uy, ny: ux, at: ux * my - uy * mx });

/** The line through the two points in which two circles meet; none for circles about one centre. */
function commonChord(a: Edge, b: Edge): Line | undefined {
  const [p, q] = [centre(a), centre(b)];
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const distance = Math.hypot(dx, dy);
  const [r, s] = [radius(a), radius(b)];
  if (distance < 1e-12 * (r + s)) return undefined;
  const along = (distance + ((r - s) * (r + s)) / distance) / 2;
  const [nx, ny] = [dx / distance, dy / distance];
  return { nx, ny, at: nx * p.x + ny * p.y + along };
}

/** Whether two edges follow each other and the point is only their common vertex. */
function isJoint(edges: readonly Edge[], i: number, j: number, point: Point, within: number): boolean {
  const joints = [];
  if (j === i + 1) joints.push(pointAt(edges[j], 0));
  if (i === 0 && j === edges.length - 1) joints.push(pointAt(edges[0], 0));
  return joints.some(({ x, y }) => Math.hypot(x - point.x, y - point.y) <= jointReach * within);
}

/** Tangent neighbours meet so flatly that their crossing is known less well along them than across. */
const jointReach = 1e4;

const boxAround = (edge: Edge): Bounds => {
  const end = pointAt(edge, 1);
  const { left, right, bottom, top } = boundsOf([edge]);
  return {
    left: Math.min(left, end.x),
    right: Math.max(right, end.x),
    bottom: Math.min(bottom, end.y),
    top: Math.max(top, end.y),
  };
};

const apart = (a: Bounds, b: Bounds): boolean =>
  a.right < b.left || b.right < a.left || a.top < b.bottom || b.top < a.bottom;
