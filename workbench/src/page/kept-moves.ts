import type { History, Move } from '../plan/history.ts';

const [servedPlace, movesPlace] = ['bloomrail.served', 'bloomrail.moves'];

type Moves = Omit<History, 'plan'>;

/** Moves made on this very plan at another time in this browser; none if another plan was served since. */
export function keptMoves(served: string): Moves | undefined {
  try {
    const kept = localStorage.getItem(servedPlace) === served ? localStorage.getItem(movesPlace) : null;
    return kept === null ? undefined : (JSON.parse(kept) as { done: Move[]; undone: Move[] });
  } catch {
    return undefined;
  }
}

/** Keeps the moves beside the plan they were made on. A browser that refuses to keep things costs only that. */
export function keepMoves(served: string, { done, undone }: Moves): void {
  try {
    if (localStorage.getItem(servedPlace) !== served) localStorage.setItem(servedPlace, served);
    localStorage.setItem(movesPlace, JSON.stringify({ done, undone }));
  } catch {
    // A private window or a full disk: the moves last as long as the page.
  }
}
