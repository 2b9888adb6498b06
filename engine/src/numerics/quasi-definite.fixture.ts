import { patternOfElements, type SymmetricPattern } from './pattern.ts';
import type { Random } from './random.ts';

export interface System {
  readonly pattern: SymmetricPattern;
  readonly values: Float64Array;
  readonly signs: Int8Array;
}

/** Any graph, any mixture of signs, dominant diagonal: quasi-definite under every order of elimination. */
export function quasiDefinite(size: number, edges: number, random: Random): System {
  const ends = Array.from({ length: 2 * edges }, () => Math.floor(random() * size));
  const { pattern } = patternOfElements(size, ends, 2);
  const signs = Int8Array.from({ length: size }, () => (random() < 0.3 ? -1 : 1));
  const values = new Float64Array(pattern.row.length);
  const sums = new Float64Array(size).fill(0.1);
  for (let j = 0; j < size; j++) {
    for (let at = pattern.columnStart[j] + 1; at < pattern.columnStart[j + 1]; at++) {
      values[at] = 2 * random() - 1;
      sums[j] += Math.abs(values[at]);
      sums[pattern.row[at]] += Math.abs(values[at]);
    }
  }
  for (let j = 0; j < size; j++) values[pattern.columnStart[j]] = signs[j] * sums[j];
  return { pattern, values, signs };
}
