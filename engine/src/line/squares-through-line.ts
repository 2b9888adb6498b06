import type { Bar } from '../bar/bar.ts';
import { charge } from '../bar/charge.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { squareGrid } from '../phenomena/metal-flow/drawn-squares/square-grid.ts';
import type { DrawnSquares } from '../phenomena/metal-flow/drawn-squares/squares.ts';
import { gradeOf } from './grade-of.ts';
import type { Plan } from './plan.ts';
import { type Stop, stopsOf } from './stops.ts';

/** The squares behind one pass, each as the groove saw it. */
export interface SquaresBehind {
  readonly code: string;
  readonly title: string;
  /** As they were drawn on the bloom in front of the first stand. */
  readonly drawn: DrawnSquares;
  readonly now: DrawnSquares;
}

/**
 * Squares of `side`, m, drawn on the bloom in front of the first stand and carried through every pass of a plan: one answer
 * per pass, as soon as it is rolled. Ends with a reason at the first stop without an answer, at a pass by the handbook, which
 * knows no squares, and where the side does not suit the bloom.
 */
export function* squaresThroughLine(plan: Plan, side: number): Generator<SquaresBehind, Result<void>, void> {
  const charged = charge(plan.bloom, gradeOf(plan));
  if (!charged.ok) return charged;
  let bar: Bar = charged.value;
  let drawn: DrawnSquares | undefined;
  for (const stop of stopsOf(plan)) {
    if (stop.group === 'cold') break;
    if (isPass(stop) && !drawn) {
      const grid = squareGrid(bar.outline, side);
      if (!grid.ok) return grid;
      drawn = grid.value;
      bar = { ...bar, squares: drawn };
    }
    const done = stop.work(bar);
    if (!done.ok) return done;
    bar = done.value.bar;
    if (!isPass(stop) || !drawn) continue;
    if (!bar.squares) return unknown(stop);
    yield { code: stop.code, title: stop.title, drawn, now: bar.squares };
  }
  return ok(undefined);
}

const isPass = ({ group }: Stop): boolean => group !== 'heat' && group !== 'cold';

const unknown = ({ code }: Stop): Result<never> =>
  fail({
    model: 'drawn squares',
    reason: `pass ${code} is computed by the handbook, which does not know where the steel goes: choose metal flow`,
  });
