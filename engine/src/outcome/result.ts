/** What a computation returns: an answer, or the reason why the model has none. Nothing is thrown for bad physics. */
export type Result<T, F = Failure> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: F };

/** The model has no answer. Solvers say how far they got; a field that did not converge is never returned. */
export interface Failure {
  /** Which model gave up, in the trade's words: 'straightener', 'conduction'. */
  readonly model: string;
  /** One sentence: what did not settle, with numbers and units. */
  readonly reason: string;
  /** Size of what was left unbalanced, relative; absent where no iteration was involved. */
  readonly residual?: number;
  readonly iterations?: number;
}

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });

export const fail = (failure: Failure): Result<never, Failure> => ({ ok: false, failure });

/** For callers that have already proved success, and for tests: the value, or a thrown error with the reason. */
export function must<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`${result.failure.model}: ${result.failure.reason}`);
}
