import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { carriedSquares, drawnOn } from '../drawn-squares/carried-through.ts';
import { asItLies, type Placing, placedOutline, placedPoints } from '../drawn-squares/placing.ts';
import { squareGrid } from '../drawn-squares/square-grid.ts';
import type { DrawnSquares } from '../drawn-squares/squares.ts';
import { outlineOf } from '../meshing/whole.ts';
import type { FlowProblem } from '../problem.ts';
import type { Symmetry } from '../quad-mesh.ts';
import type { FlowSolution } from '../solution.ts';

/** One step of a block's rolling: how it is handled before it, and the pass that its section then goes through. */
export interface RollingStep {
  /** As it lies when absent. */
  readonly placing?: Placing;
  /** The pass for the section as it lies in front of the rolls. */
  readonly problem: (entering: Outline) => Result<FlowProblem>;
}

/** The squares to draw: side in m, and the lines they are laid through (squareGrid). */
export interface SquaresWanted {
  readonly side: number;
  readonly through?: Symmetry;
}

/** One step done, in the axes of its pass. */
export interface StepDone {
  readonly solution: FlowSolution;
  /** The squares as the mesh of this step took them in: what they stretch in the step is counted from here. */
  readonly before: DrawnSquares;
  readonly after: DrawnSquares;
}

export interface SteppedRolling {
  readonly steps: readonly StepDone[];
  /** Section after the last step. */
  readonly outline: Outline;
}

/** A block between two steps. */
interface Block {
  readonly outline: Outline;
  readonly squares?: DrawnSquares;
}

/**
 * Rolls a block in steps with squares drawn on its section, as in a laboratory: pass, look at the squares, set the rolls
 * closer, pass again. The section that leaves a step enters the next one as a polygon, turned and moved as told; squares
 * are drawn on the section that the first step's mesh holds. Each step's own mesh cuts corners of the section a little
 * differently, and takes the skin's points along: part-cells there are right to that.
 *
 * solve   computes a pass. Fails with the number of the step, 1 for the first, that has no problem or no solution.
 */
export function steppedRolling(
  outline: Outline,
  steps: readonly RollingStep[],
  wanted: SquaresWanted,
  solve: (problem: FlowProblem) => Result<FlowSolution>,
): Result<SteppedRolling> {
  const done: StepDone[] = [];
  let block: Block = { outline };
  for (const step of steps) {
    const made = oneStep(block, step, wanted, solve);
    if (!made.ok) {
      const reason = `Step ${done.length + 1} of ${steps.length}: ${made.failure.reason}`;
      return fail({ ...made.failure, reason });
    }
    done.push(made.value);
    const { mesh, sections } = made.value.solution;
    block = { outline: outlineOf(mesh, sections[sections.length - 1].xy), squares: made.value.after };
  }
  return ok({ steps: done, outline: block.outline });
}

function oneStep(
  block: Block,
  { placing = asItLies, problem }: RollingStep,
  wanted: SquaresWanted,
  solve: (problem: FlowProblem) => Result<FlowSolution>,
): Result<StepDone> {
  const posed = problem(placedOutline(block.outline, placing));
  if (!posed.ok) return posed;
  const { mesh } = posed.value;
  const squares = block.squares
    ? ok({ ...block.squares, points: placedPoints(block.squares.points, placing) })
    : squareGrid(outlineOf(mesh, mesh.xy), wanted.side, wanted.through);
  if (!squares.ok) return squares;
  const solution = solve(posed.value);
  if (!solution.ok) return solution;
  const before = drawnOn(mesh, squares.value);
  return ok({ solution: solution.value, before, after: carriedSquares(before, solution.value) });
}
