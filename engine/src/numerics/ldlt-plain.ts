import type { Field } from '../outcome/field.ts';
import type { SymmetricPattern } from './pattern.ts';

/** L (unit diagonal left out, column after column) and D of A = L D Lᵀ, in the given order of unknowns. */
export interface PlainFactor {
  readonly start: Int32Array;
  readonly row: Int32Array;
  readonly lower: Float64Array;
  readonly diagonal: Float64Array;
}

/**
 * The short second implementation beside ldlt.ts: row by row, no reordering, no blocking, no pivoting.
 * Source: T. Davis, Algorithm 849 "A concise sparse Cholesky factorization package", 2005, from memory.
 */
export function plainFactor(pattern: SymmetricPattern, values: Field): PlainFactor {
  const n = pattern.size;
  const upper = columnsAbove(pattern);
  const parent = new Int32Array(n).fill(-1);
  const count = new Int32Array(n);
  const mark = new Int32Array(n);
  for (let k = 0; k < n; k++) {
    mark[k] = k;
    for (let at = upper.start[k]; at < upper.start[k + 1]; at++) {
      for (let i = upper.column[at]; mark[i] !== k; i = parent[i]) {
        if (parent[i] < 0) parent[i] = k;
        count[i]++;
        mark[i] = k;
      }
    }
  }
  const start = new Int32Array(n + 1);
  for (let k = 0; k < n; k++) start[k + 1] = start[k] + count[k];
  const row = new Int32Array(start[n]);
  const lower = new Float64Array(start[n]);
  const diagonal = new Float64Array(n);
  const y = new Float64Array(n);
  const path = new Int32Array(n);
  const order = new Int32Array(n);
  const next = start.slice(0, n);
  mark.fill(-1);
  for (let k = 0; k < n; k++) {
    mark[k] = k;
    let top = n;
    for (let at = upper.start[k]; at < upper.start[k + 1]; at++) {
      y[upper.column[at]] += values[upper.entry[at]];
      let length = 0;
      for (let i = upper.column[at]; mark[i] !== k; i = parent[i]) {
        path[length++] = i;
        mark[i] = k;
      }
      while (length > 0) order[--top] = path[--length];
    }
    diagonal[k] = values[pattern.columnStart[k]];
    for (; top < n; top++) {
      const i = order[top];
      const yi = y[i];
      y[i] = 0;
      for (let at = start[i]; at < next[i]; at++) y[row[at]] -= lower[at] * yi;
      const l = yi / diagonal[i];
      diagonal[k] -= l * yi;
      row[next[i]] = k;
      lower[next[i]++] = l;
    }
  }
  return { start, row, lower, diagonal };
}

/** The x of A x = rhs. */
export function plainSolve({ start, row, lower, diagonal }: PlainFactor, rhs: Field): Float64Array {
  const x = Float64Array.from(rhs);
  for (let j = 0; j < x.length; j++) {
    for (let at = start[j]; at < start[j + 1]; at++) x[row[at]] -= lower[at] * x[j];
  }
  for (let j = x.length - 1; j >= 0; j--) {
    x[j] /= diagonal[j];
    for (let at = start[j]; at < start[j + 1]; at++) x[j] -= lower[at] * x[row[at]];
  }
  return x;
}

/** The strict lower triangle read by rows: for each row its columns, and where their values stand. */
function columnsAbove({ size, columnStart, row }: SymmetricPattern) {
  const start = new Int32Array(size + 1);
  for (let at = 0; at < row.length; at++) start[row[at] + 1]++;
  for (let k = 0; k < size; k++) start[k + 1] += start[k] - 1;
  const column = new Int32Array(start[size]);
  const entry = new Int32Array(start[size]);
  const next = start.slice(0, size);
  for (let j = 0; j < size; j++) {
    for (let at = columnStart[j] + 1; at < columnStart[j + 1]; at++) {
      column[next[row[at]]] = j;
      entry[next[row[at]]++] = at;
    }
  }
  return { start, column, entry };
}
