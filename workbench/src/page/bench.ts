import { createStore } from 'zustand/vanilla';
import type { Answer, Order } from '../compute/messages.ts';
import { answered, nothingYet, ordered, type Progress } from '../compute/progress.ts';
import { type History, moved, redo, reopened, undo, undoAll } from '../plan/history.ts';
import type { Json } from '../plan/plan-file.ts';

/** What the page works on: one plan with its moves, and the line computed from it. */
export interface Bench {
  readonly history: History;
  readonly progress: Progress;
  /** The last move's own station, and how long its answer took from the key press to the picture, ms. */
  readonly quick?: { readonly code: string; readonly ms: number };
  /** The plan behind the last full result before the present moves. */
  readonly settledPlan: Json;
  /** That result is shown instead of the present one, for comparing. */
  readonly before: boolean;
  /** Opens a plan, with moves that were made on it at another time. */
  readonly open: (plan: Json, moves?: Omit<History, 'plan'>) => void;
  /** A move that joins goes on with the last one: a drag, an arrow key held down. */
  readonly move: (path: string, title: string, value: Json, joins?: boolean) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Takes every move back: the plan as it was opened. */
  readonly undoAll: () => void;
  readonly showBefore: (before: boolean) => void;
  readonly stop: () => void;
  readonly computeNow: () => void;
}

/** Connection to whatever computes lines: the worker of the page, or a test's own. */
export interface Computer {
  readonly send: (order: Order) => void;
  readonly onAnswer: (listener: (answer: Answer) => void) => void;
  /** ms; any zero. */
  readonly now: () => number;
  readonly later: (then: () => void, ms: number) => void;
  /** Calls back when the next picture is on the screen. */
  readonly afterPicture: (then: () => void) => void;
}

/** ms between two pictures while stations far from the move arrive; drawing each at once would slow the computing. */
const pictureEvery = 150;

const noMoves: Omit<History, 'plan'> = { done: [], undone: [] };

export type BenchStore = ReturnType<typeof createBench>;

export function createBench(computer: Computer) {
  let pending: { path: string; at: number } | undefined;

  const store = createStore<Bench>()((set, get) => {
    const change = (history: History, path?: string) => {
      const { progress, history: last } = get();
      if (history === last) return;
      pending = path === undefined ? undefined : { path, at: computer.now() };
      set({ history, ...(progress.status === 'done' ? { settledPlan: last.plan } : {}) });
      compute();
    };
    const compute = () => {
      const run = get().progress.run + 1;
      set({ progress: ordered(get().progress, run) });
      computer.send({ kind: 'compute', run, plan: get().history.plan });
    };
    return {
      history: reopened({}, noMoves),
      progress: nothingYet,
      settledPlan: {},
      before: false,
      open: (plan, moves = noMoves) => {
        change(reopened(plan, moves));
        set({ settledPlan: get().history.plan });
      },
      move: (path, title, value, joins) => change(moved(get().history, path, title, value, joins), path),
      undo: () => change(undo(get().history), lastOf(get().history.done)?.path),
      redo: () => change(redo(get().history), lastOf(get().history.undone)?.path),
      undoAll: () => change(undoAll(get().history)),
      showBefore: (before) => set({ before }),
      stop: () => computer.send({ kind: 'stop' }),
      computeNow: compute,
    };
  });

  const waiting: Answer[] = [];
  let due = false;

  computer.onAnswer((answer) => {
    waiting.push(answer);
    if (isAwaited(answer)) return show();
    if (!due) computer.later(show, pictureEvery);
    due = true;
  });

  /** The moved station, the first one of all and every ending are shown at once. */
  function isAwaited({ run, contents }: Answer): boolean {
    const { progress } = store.getState();
    if (run !== progress.run || progress.stations.length === 0) return true;
    return contents.some((content) =>
      content.kind === 'visit' || content.kind === 'kept'
        ? isPending(progress.stations[content.index])
        : content.kind !== 'stops',
    );
  }

  function show(): void {
    due = false;
    const answers = waiting.splice(0);
    const progress = answers.reduce(answered, store.getState().progress);
    store.setState({ progress });
    for (const { run, contents } of answers) {
      if (run !== progress.run) continue;
      for (const content of contents) {
        if (content.kind === 'visit' || content.kind === 'kept') timeAnswer(progress.stations[content.index]);
      }
    }
  }

  const isPending = (station?: { path: string }): boolean =>
    station !== undefined && pending?.path.startsWith(`${station.path}.`) === true;

  function timeAnswer(station: { code: string; path: string }): void {
    if (!pending || !isPending(station)) return;
    const { code } = station;
    const { at } = pending;
    pending = undefined;
    computer.afterPicture(() => store.setState({ quick: { code, ms: computer.now() - at } }));
  }

  return store;
}

const lastOf = <T>(list: readonly T[]): T | undefined => list[list.length - 1];
