import { Clipper, FillRule, type PathsD } from 'clipper2-ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { flattened, outlineThrough } from './flatten.ts';
import type { Outline } from './outline.ts';

/**
 * Booleans of outlines. Arcs become chords that leave them by the sagitta at most, so areas are right to about
 * perimeter × sagitta; the exact outlines stay the masters. Cutting by a line is exact: see cut.ts.
 */
const fineSagitta = 2e-6;

/** What two sections have in common; may be empty or in parts. */
export const common = (a: Outline, b: Outline, sagitta = fineSagitta): Result<Outline[]> =>
  partsOf(Clipper.intersectD(paths(a, sagitta), paths(b, sagitta), FillRule.NonZero, decimals));

/** What either of two sections covers. Fails where they close around a hole. */
export const united = (a: Outline, b: Outline, sagitta = fineSagitta): Result<Outline[]> =>
  partsOf(Clipper.unionD(paths(a, sagitta), paths(b, sagitta), FillRule.NonZero, decimals));

/** What the first section covers and the second does not. Fails where the second lies wholly inside. */
export const without = (a: Outline, b: Outline, sagitta = fineSagitta): Result<Outline[]> =>
  partsOf(Clipper.differenceD(paths(a, sagitta), paths(b, sagitta), FillRule.NonZero, decimals));

/** Clipping runs on whole numbers: millimetres with six decimals. */
export const decimals = 6;
const millimetres = 1e3;

export function paths(outline: Outline, sagitta: number): PathsD {
  const corners = flattened(outline, sagitta);
  const path = Array.from({ length: corners.length / 2 }, (_, i) => ({
    x: corners[2 * i] * millimetres,
    y: corners[2 * i + 1] * millimetres,
  }));
  return [path];
}

export function partsOf(solution: PathsD): Result<Outline[]> {
  if (solution.some((path) => Clipper.areaD(path) < 0)) {
    return fail({
      model: 'section',
      reason: 'The parts close around a hole, which one outline cannot show.',
    });
  }
  return ok(
    solution.map((path) => outlineThrough(path.flatMap(({ x, y }) => [x / millimetres, y / millimetres]))),
  );
}
