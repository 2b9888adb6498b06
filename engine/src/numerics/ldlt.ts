import type { Field, Indices } from '../outcome/field.ts';
import { type Failure, ok, type Result } from '../outcome/result.ts';
import { type PlainFactor, plainFactor, plainSolve } from './ldlt-plain.ts';
import type { SymmetricPattern } from './pattern.ts';

export interface Symbolic {
  readonly pattern: SymmetricPattern;
}

export interface Factor {
  readonly symbolic: Symbolic;
  /** How many pivots are negative: by Sylvester's law, how many eigenvalues are. */
  readonly negative: number;
  /** Unknowns whose pivot has not the expected sign, ascending; empty when none was expected. */
  readonly wrongSigns: Indices;
  readonly plain: PlainFactor;
}

export interface FactorOptions {
  /** +1 or −1 per unknown. */
  readonly signs?: Indices;
  /** Storage of an earlier factor of the same Symbolic, overwritten. */
  readonly into?: Factor;
}

/** A pivot that vanished: the matrix is singular, or so close that no digit of a solution would be right. */
export interface SingularPivot extends Failure {
  readonly unknown: number;
  readonly pivot: number;
}

export function analyse(pattern: SymmetricPattern, _coordinates?: Field): Symbolic {
  return { pattern };
}

export function factor(
  symbolic: Symbolic,
  values: Field,
  { signs }: FactorOptions = {},
): Result<Factor, SingularPivot> {
  const plain = plainFactor(symbolic.pattern, values);
  const wrongSigns: number[] = [];
  let negative = 0;
  for (let j = 0; j < plain.diagonal.length; j++) {
    const pivot = plain.diagonal[j];
    const tiny = 1e-13 * Math.abs(values[symbolic.pattern.columnStart[j]]);
    if (!(Math.abs(pivot) > tiny)) {
      const reason = `pivot ${pivot} of unknown ${j} vanishes`;
      return { ok: false, failure: { model: 'ldlt', reason, unknown: j, pivot } };
    }
    if (pivot < 0) negative++;
    if (signs && signs[j] * pivot < 0) wrongSigns.push(j);
  }
  return ok({ symbolic, negative, wrongSigns, plain });
}

/** The x of A x = rhs for one right-hand side or several, one after the other; `out` may be `rhs`. */
export function solve(
  { symbolic, plain }: Factor,
  rhs: Field,
  out = new Float64Array(rhs.length),
): Float64Array {
  const n = symbolic.pattern.size;
  for (let from = 0; from < rhs.length; from += n) {
    out.set(
      plainSolve(
        plain,
        Float64Array.from({ length: n }, (_, i) => rhs[from + i]),
      ),
      from,
    );
  }
  return out;
}
