import { ok, type Result } from '../../outcome/result.ts';
import { carriedSquares, drawnOn } from '../../phenomena/metal-flow/drawn-squares/carried-through.ts';
import { squareGrid } from '../../phenomena/metal-flow/drawn-squares/square-grid.ts';
import type { DrawnSquares } from '../../phenomena/metal-flow/drawn-squares/squares.ts';
import { outlineOf } from '../../phenomena/metal-flow/meshing/whole.ts';
import { sectionProperties } from '../../section/properties.ts';
import type { SolvedCase } from './run-flow-case.ts';

/** Squares drawn on the entering section and carried through the pass; `side` in m, about a fifteenth of its size when absent. */
export function squaresOf(
  { solution }: SolvedCase,
  side?: number,
): Result<{ readonly before: DrawnSquares; readonly after: DrawnSquares }> {
  const outline = outlineOf(solution.mesh, solution.mesh.xy);
  const { area } = sectionProperties(outline);
  const whole = Math.max(1, Math.round((1000 * Math.sqrt(area)) / 15)) / 1000;
  const drawn = squareGrid(outline, side ?? whole, solution.mesh.symmetry);
  if (!drawn.ok) return drawn;
  const before = drawnOn(solution.mesh, drawn.value);
  return ok({ before, after: carriedSquares(before, solution) });
}
