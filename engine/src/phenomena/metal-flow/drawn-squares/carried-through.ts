import type { Field, Indices } from '../../../outcome/field.ts';
import type { QuadMesh } from '../quad-mesh.ts';
import type { FlowSolution, FlowStep } from '../solution.ts';
import { acrossEdges } from './across.ts';
import { folded, unfolded } from './folding.ts';
import {
  atSeat,
  elementAt,
  emptySeat,
  oneAtSeat,
  type Seat,
  type Standing,
  sitInside,
  sitOnSkin,
} from './seat.ts';
import type { DrawnSquares } from './squares.ts';

/**
 * Where points of the entering section (x0, y0, …, m, whole section, in the mill's axes) are in the leaving one. The mesh
 * slides over the steel where it is mended, so points are not tied to it: slice by slice each is found in the mesh and
 * moved by the velocity there for as long as it takes through the slice at the speed there, to first order in the slice as the mesh itself is.
 *
 * skin   numbers of points on the skin: they are put on the mesh's own skin before every step and stay on it.
 * Points off the section, and points that round-off carries off it, take the nearest place on the skin.
 */
export function carriedThrough(solution: FlowSolution, points: Field, skin: Indices = []): Float64Array {
  const { mesh, sections, steps } = solution;
  const across = acrossEdges(mesh.quads);
  const start = folded(points, mesh.symmetry);
  const riders = ridersAt(start.xy, skin);
  for (let i = 0; i < steps.length; i++) {
    const speed = (sections[i].speed + sections[i + 1].speed) / 2;
    follow(riders, { mesh, across, xy: sections[i].xy }, steps[i], speed);
  }
  settle(riders, { mesh, across, xy: sections[steps.length].xy });
  return unfolded(start, mesh.symmetry);
}

/** The same squares after a pass. */
export const carriedSquares = (squares: DrawnSquares, solution: FlowSolution): DrawnSquares => ({
  ...squares,
  points: [...carriedThrough(solution, squares.points, squares.skin)],
});

/**
 * The squares as the mesh of a pass takes them in: skin points on its skin, points off the section brought back to it. A
 * mesh cuts across arcs that the true outline keeps; stretches are to be counted from here.
 */
export function drawnOn(mesh: QuadMesh, squares: DrawnSquares): DrawnSquares {
  const start = folded(squares.points, mesh.symmetry);
  settle(ridersAt(start.xy, squares.skin), { mesh, across: acrossEdges(mesh.quads), xy: mesh.xy });
  return { ...squares, points: [...unfolded(start, mesh.symmetry)] };
}

/** Points on their way, in the computed part; `xy` is written in place. */
interface Riders {
  readonly xy: Float64Array;
  readonly isSkin: Uint8Array;
  /** Element in which each point was last. */
  readonly near: Int32Array;
  readonly seat: Seat;
}

function ridersAt(xy: Float64Array, skin: Indices): Riders {
  const isSkin = new Uint8Array(xy.length / 2);
  for (const point of skin) isSkin[point] = 1;
  return { xy, isSkin, near: new Int32Array(isSkin.length), seat: emptySeat() };
}

/** Moves all points on by one slice. */
function follow(
  { xy, isSkin, near, seat }: Riders,
  at: Standing,
  { velocity, excess, length }: FlowStep,
  speed: number,
): void {
  for (let p = 0; p < near.length; p++) {
    const [x, y] = [xy[2 * p], xy[2 * p + 1]];
    const element = isSkin[p] ? -1 : elementAt(at, x, y, near[p]);
    if (element < 0) sitOnSkin(at, x, y, seat);
    else sitInside(at, element, x, y, seat);
    near[p] = Math.max(0, element);
    const duration = length / (speed + oneAtSeat(seat, excess));
    for (const i of [0, 1] as const)
      xy[2 * p + i] = atSeat(seat, at.xy, i) + duration * atSeat(seat, velocity, i);
  }
}

/** Skin points to the skin, and points outside back to it; the others stay. */
function settle({ xy, isSkin, near, seat }: Riders, at: Standing): void {
  for (let p = 0; p < near.length; p++) {
    if (!isSkin[p] && elementAt(at, xy[2 * p], xy[2 * p + 1], near[p]) >= 0) continue;
    sitOnSkin(at, xy[2 * p], xy[2 * p + 1], seat);
    for (const i of [0, 1] as const) xy[2 * p + i] = atSeat(seat, at.xy, i);
  }
}
