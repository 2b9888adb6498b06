import type { Field } from '../outcome/field.ts';
import type { DrawnSquares } from '../phenomena/metal-flow/drawn-squares/squares.ts';
import type { TriMesh } from '../section/mesh.ts';
import type { Outline } from '../section/outline.ts';
import type { Grade } from '../steel/grade.ts';

/**
 * The piece of steel that travels down the line. A station takes one and gives back another; nothing writes to it.
 * One section mesh serves the whole bar; temperatures are known at three places along it, because head and tail
 * pass each stand at different times.
 */
export interface Bar {
  readonly grade: Grade;
  /** The hot section now, in the pose of the next station. */
  readonly outline: Outline;
  readonly mesh: TriMesh;
  readonly head: Place;
  readonly middle: Place;
  readonly tail: Place;
  /** kg. What is lost on the way (scale, crops, kerfs) leaves through the balance of a record. */
  readonly mass: number;
  /** m, hot as it is now. */
  readonly length: number;
  /** Hot lengths along the bar once a saw has divided it; their sum is `length`. One entry while it is whole. */
  readonly pieces: readonly number[];
  /** Elongation since the bloom: entry area over present area, both hot. */
  readonly elongation: number;
  /** Depth of decarburised steel below the surface, m, by the carbon loss followed from the furnace. */
  readonly decarburised: number;
  /** Thickness of the scale on the skin, m; absent while there is none to speak of. */
  readonly scale?: number;
  /** Equivalent strain at each node of the mesh on leaving the last stand; absent where none was followed. */
  readonly strain?: Field;
  /** Squares drawn on the section, in its pose; kept only through passes by metal flow. */
  readonly squares?: DrawnSquares;
  /** What the cooling bed leaves for the straightener; absent before. */
  readonly cold?: ColdState;
}

/** One place along the bar. */
export interface Place {
  /** s since the bloom left the furnace; negative inside it. */
  readonly clock: number;
  /** °C at each node of the bar's mesh. */
  readonly temperature: Field;
}

/** State of the section after cooling, fibre by fibre: one fibre per mesh node with that node's area. */
export interface ColdState {
  /** Curvature in the height plane, 1/m; positive when the head side is longer (concave to the foot). */
  readonly heightCurvature: number;
  /** Curvature in the side plane, 1/m. */
  readonly sideCurvature: number;
  /** Axial stress at each node, Pa, tension positive. */
  readonly stress: Field;
  /** Share of pearlite at each node, 0 to 1. */
  readonly pearlite: Field;
}

export type PlaceName = 'head' | 'middle' | 'tail';
export const placeNames: readonly PlaceName[] = ['head', 'middle', 'tail'];
