import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { earClipped } from './ear-clipping.ts';
import { flipToDelaunay, nextEdge, type Triangulation } from './triangulation.ts';

/** The constrained Delaunay triangulation of a polygon whose corners are all its nodes, counter-clockwise. */
export function triangulatedPolygon(xy: Float64Array): Result<Triangulation> {
  const triangles = constrainedDelaunay(xy) ?? earClipped(xy);
  if (!triangles) {
    return fail({
      model: 'mesh',
      reason: 'The boundary crosses or touches itself, so its inside cannot be meshed.',
    });
  }
  const triangulation = { xy: Array.from(xy), triangles, twins: twinsOf(triangles, xy.length / 2) };
  flipToDelaunay(triangulation);
  return ok(triangulation);
}

/** Undefined where round-off along nearly straight rows of corners misleads the sweep, or the polygon is not simple. */
function constrainedDelaunay(xy: Float64Array): number[] | undefined {
  const count = xy.length / 2;
  const sweep = new Delaunator(xy);
  try {
    const constraints = Array.from({ length: count }, (_, i): [number, number] => [i, (i + 1) % count]);
    new Constrainautor(sweep, constraints);
  } catch {
    return undefined;
  }
  const triangles = insideOf(sweep.triangles);
  return triangles.length === 3 * (count - 2) ? triangles : undefined;
}

/** A triangle lies inside exactly when its corners, taken counter-clockwise, follow the order of the boundary. */
function insideOf(corners: ArrayLike<number>): number[] {
  const triangles: number[] = [];
  for (let i = 0; i < corners.length; i += 3) {
    // Delaunator runs clockwise when y points up.
    const [a, b, c] = [corners[i + 2], corners[i + 1], corners[i]];
    if ((a < b ? 1 : 0) + (b < c ? 1 : 0) + (c < a ? 1 : 0) === 2) triangles.push(a, b, c);
  }
  return triangles;
}

function twinsOf(triangles: readonly number[], count: number): number[] {
  const nameOf = (start: number, end: number) => start * count + end;
  const edgeFrom = new Map(triangles.map((start, edge) => [nameOf(start, triangles[nextEdge(edge)]), edge]));
  return triangles.map((start, edge) => edgeFrom.get(nameOf(triangles[nextEdge(edge)], start)) ?? -1);
}
