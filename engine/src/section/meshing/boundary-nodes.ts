import { type BoundaryCurve, perimeterOf, pointAtDistance } from '../boundary-curve.ts';
import { turnAtJoint } from '../joints.ts';
import { type Sizing, sharpTurn } from './sizing.ts';

/** Steps of the sum over the whole boundary; 300 leave the spacing right within a few percent. */
const samplesOverPerimeter = 400;

/** Distances along the boundary at which nodes stand, ascending, m: at every corner, and between at the size wanted. */
export function boundaryNodes(curve: BoundaryCurve, sizing: Sizing): number[] {
  const corners = cornersOf(curve);
  return corners.flatMap((from, i) => {
    const to = i + 1 < corners.length ? corners[i + 1] : corners[0] + perimeterOf(curve);
    return spread(curve, sizing, from, to, corners.length === 1);
  });
}

/** Where the boundary turns sharply; a boundary without corners starts at vertex 0. */
function cornersOf({ edges, starts }: BoundaryCurve): number[] {
  const sharp = edges.flatMap((edge, i) => {
    const before = edges[(i + edges.length - 1) % edges.length];
    return Math.abs(turnAtJoint(before, edge)) > sharpTurn ? [starts[i]] : [];
  });
  return sharp.length > 0 ? sharp : [0];
}

/** Distances from one corner up to the next, the first included: equal steps of ∫ ds / size. */
function spread(curve: BoundaryCurve, sizing: Sizing, from: number, to: number, closed: boolean): number[] {
  const count = Math.ceil(samplesOverPerimeter * ((to - from) / perimeterOf(curve))) + 8;
  const step = (to - from) / count;
  const edgesUpTo = new Float64Array(count + 1);
  for (let i = 0; i < count; i++) {
    const { x, y } = pointAtDistance(curve, from + (i + 0.5) * step);
    edgesUpTo[i + 1] = edgesUpTo[i] + step / sizing(x, y);
  }
  const edges = Math.max(closed ? 3 : 1, Math.round(edgesUpTo[count]));
  const places: number[] = [];
  for (let k = 0, i = 0; k < edges; k++) {
    const wanted = (k / edges) * edgesUpTo[count];
    while (edgesUpTo[i + 1] < wanted) i++;
    places.push(from + step * (i + (wanted - edgesUpTo[i]) / (edgesUpTo[i + 1] - edgesUpTo[i])));
  }
  return places;
}
