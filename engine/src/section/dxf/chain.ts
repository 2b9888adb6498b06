import type { Point } from '../edges.ts';
import type { Vertex } from '../outline.ts';
import type { Segment } from './segments.ts';

/** One closed chain through all segments, whichever way each was drawn, and every place where that does not work. */
export function chained(
  segments: readonly Segment[],
  tolerance: number,
): { vertices: Vertex[]; problems: string[] } {
  const waiting = segments.filter(({ from, to }) => gap(from, to) > tolerance);
  if (waiting.length === 0)
    return {
      vertices: [],
      problems: segments.length > 0 ? ['nothing in it is longer than the tolerance'] : [],
    };
  const problems = forks(waiting, tolerance);
  const chains: Vertex[][] = [];
  while (waiting.length > 0) chains.push(nextChain(waiting, tolerance, problems));
  if (chains.length > 1) problems.push(`there are ${chains.length} separate outlines; one is wanted`);
  return { vertices: chains[0], problems };
}

const gap = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

const at = ({ x, y }: Point): string => `x ${x.toFixed(3)}, y ${y.toFixed(3)}`;

/** Takes the segments of one chain out of those waiting. */
function nextChain(waiting: Segment[], tolerance: number, problems: string[]): Vertex[] {
  const vertices: Vertex[] = [];
  let segment = waiting.shift();
  const start = segment?.from ?? { x: 0, y: 0 };
  let end = start;
  while (segment) {
    vertices.push({ x: segment.from.x, y: segment.from.y, bulge: segment.bulge });
    end = segment.to;
    segment = takeFrom(waiting, end, tolerance);
  }
  if (gap(start, end) > tolerance) {
    problems.push(
      `the outline is open between ${at(end)} and ${at(start)}: ${gap(start, end).toFixed(3)} apart`,
    );
  }
  return vertices;
}

/** The waiting segment that starts or ends nearest to a point, turned to start there. */
function takeFrom(waiting: Segment[], point: Point, tolerance: number): Segment | undefined {
  let [best, least] = [-1, tolerance];
  waiting.forEach(({ from, to }, i) => {
    const distance = Math.min(gap(from, point), gap(to, point));
    if (distance <= least) [best, least] = [i, distance];
  });
  if (best < 0) return undefined;
  const [segment] = waiting.splice(best, 1);
  if (gap(segment.from, point) <= gap(segment.to, point)) return segment;
  return { ...segment, from: segment.to, to: segment.from, bulge: 0 - segment.bulge };
}

/** Points where more than two ends meet: the outline could go on in more than one way. */
function forks(segments: readonly Segment[], tolerance: number): string[] {
  const ends = segments.flatMap(({ from, to }) => [from, to]);
  const found: Point[] = [];
  for (const end of ends) {
    const meeting = ends.filter((other) => gap(end, other) <= tolerance).length;
    if (meeting > 2 && !found.some((point) => gap(point, end) <= tolerance)) found.push(end);
  }
  return found.map((point) => `more than two ends meet at ${at(point)}`);
}
