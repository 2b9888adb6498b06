import { type Json, valueAt, withValueAt } from './plan-file.ts';

/** One released move: what was changed, from what, to what. */
export interface Move {
  readonly path: string;
  readonly title: string;
  readonly from: Json;
  readonly to: Json;
}

/** A plan with every move since it was opened, and those taken back. */
export interface History {
  readonly plan: Json;
  readonly done: readonly Move[];
  readonly undone: readonly Move[];
}

export const opened = (plan: Json): History => ({ plan, done: [], undone: [] });

/** The plan with moves made on it before: they can be taken back like any other. */
export const reopened = (plan: Json, { done, undone }: Omit<History, 'plan'>): History => ({
  plan: done.reduce((at, { path, to }) => withValueAt(at, path, to), plan),
  done,
  undone,
});

/**
 * Makes one move; moving on from an undone state drops what was undone. The same value again is no move.
 * A move that `joins` goes on with the last one on the same path: a drag, or an arrow key held down.
 */
export function moved(history: History, path: string, title: string, to: Json, joins = false): History {
  const present = valueAt(history.plan, path) ?? null;
  if (present === to) return history;
  const last = history.done[history.done.length - 1];
  const goesOn = joins && last?.path === path;
  const move = { path, title, from: goesOn ? last.from : present, to };
  return {
    plan: withValueAt(history.plan, path, to),
    done: [...(goesOn ? history.done.slice(0, -1) : history.done), move],
    undone: [],
  };
}

export function undo(history: History): History {
  const move = history.done[history.done.length - 1];
  if (!move) return history;
  return {
    plan: withValueAt(history.plan, move.path, move.from),
    done: history.done.slice(0, -1),
    undone: [...history.undone, move],
  };
}

export function redo(history: History): History {
  const move = history.undone[history.undone.length - 1];
  if (!move) return history;
  return {
    plan: withValueAt(history.plan, move.path, move.to),
    done: [...history.done, move],
    undone: history.undone.slice(0, -1),
  };
}

/** The plan as it was opened; every move can be made again. */
export function undoAll(history: History): History {
  return history.done.reduceRight((at) => undo(at), history);
}
