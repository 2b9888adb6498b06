import { createStore } from 'zustand/vanilla';
import type { Answer, Order } from '../compute/messages.ts';
import { answered, nothingYet, ordered, type Progress } from '../compute/progress.ts';
import { type History, moved, opened, redo, undo } from '../plan/history.ts';
import type { Json } from '../plan/plan-file.ts';

/** What the page works on: one plan with its moves, and the line computed from it. */
export interface Bench {
  readonly history: History;
  readonly progress: Progress;
  /** The last move's own station, and how long its answer took from the key press to the picture, ms. */
  readonly quick?: { readonly code: string; readonly ms: number };
  readonly open: (plan: Json) => void;
  /** A move that joins goes on with the last one: a drag, an arrow key held down. */
  readonly move: (path: string, title: string, value: Json, joins?: boolean) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly stop: () => void;
  readonly computeNow: () => void;
}

/** Connection to whatever computes lines: the worker of the page, or a test's own. */
export interface Computer {
  readonly send: (order: Order) => void;
  readonly onAnswer: (listener: (answer: Answer) => void) => void;
  /** ms; any zero. */
  readonly now: () => number;
  /** Calls back when the next picture is on the screen. */
  readonly afterPicture: (then: () => void) => void;
}

export type BenchStore = ReturnType<typeof createBench>;

export function createBench(computer: Computer) {
  let pending: { path: string; at: number } | undefined;

  const store = createStore<Bench>()((set, get) => {
    const change = (history: History, path?: string) => {
      if (history === get().history) return;
      pending = path === undefined ? undefined : { path, at: computer.now() };
      set({ history });
      compute();
    };
    const compute = () => {
      const run = get().progress.run + 1;
      set({ progress: ordered(get().progress, run) });
      computer.send({ kind: 'compute', run, plan: get().history.plan });
    };
    return {
      history: opened({}),
      progress: nothingYet,
      open: (plan) => change(opened(plan)),
      move: (path, title, value, joins) => change(moved(get().history, path, title, value, joins), path),
      undo: () => change(undo(get().history), lastOf(get().history.done)?.path),
      redo: () => change(redo(get().history), lastOf(get().history.undone)?.path),
      stop: () => computer.send({ kind: 'stop' }),
      computeNow: compute,
    };
  });

  computer.onAnswer((answer) => {
    const progress = answered(store.getState().progress, answer);
    store.setState({ progress });
    if (answer.run !== progress.run) return;
    for (const content of answer.contents) {
      if (content.kind === 'visit' || content.kind === 'kept') timeAnswer(progress.stations[content.index]);
    }
  });

  function timeAnswer({ code, path }: { code: string; path: string }): void {
    if (!pending?.path.startsWith(`${path}.`)) return;
    const { at } = pending;
    pending = undefined;
    computer.afterPicture(() => store.setState({ quick: { code, ms: computer.now() - at } }));
  }

  return store;
}

const lastOf = <T>(list: readonly T[]): T | undefined => list[list.length - 1];
