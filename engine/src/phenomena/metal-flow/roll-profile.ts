import { flattenedPath } from '../../section/flatten.ts';
import type { Path } from '../../section/outline.ts';

/** Farthest that the chords of a roll's arcs leave them, m. */
const sagitta = 2e-5;

/** A roll's edge as `FlowRoll.profile` has it: points x, y in order, m. */
export const rollProfile = (edge: Path): Float64Array => flattenedPath(edge, sagitta);
