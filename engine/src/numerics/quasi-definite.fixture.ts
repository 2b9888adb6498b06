import { patternOfElements, type SymmetricPattern } from './pattern.ts';
import { type Random, seededRandom } from './random.ts';
import type { Strip } from './strip.fixture.ts';

export interface System {
  readonly pattern: SymmetricPattern;
  readonly values: Float64Array;
  readonly signs: Int8Array;
}

/** Any graph, any mixture of signs. */
export function quasiDefinite(size: number, edges: number, random: Random): System {
  const ends = Array.from({ length: 2 * edges }, () => Math.floor(random() * size));
  const { pattern } = patternOfElements(size, ends, 2);
  const signs = Int8Array.from({ length: size }, () => (random() < 0.3 ? -1 : 1));
  return { pattern, values: dominant(pattern, signs, random), signs };
}

/** A plane mesh of across × along nodes in square elements, two unknowns in each node, positive definite. */
export function planeMesh(across: number, along: number, random: Random = seededRandom(1)): Strip {
  const nodes = across * along;
  const corners = Array.from({ length: nodes - across }, (_, n) => n).filter((n) => n % across < across - 1);
  const elements = corners.flatMap((n) => [n, n + 1, n + across + 1, n + across]);
  const { pattern } = patternOfElements(2 * nodes, elements, 4, 2);
  const signs = new Int8Array(2 * nodes).fill(1);
  const coordinates = Float64Array.from({ length: 2 * nodes }, (_, i) =>
    i % 2 === 0 ? (i / 2) % across : Math.floor(i / 2 / across),
  );
  return { pattern, values: dominant(pattern, signs, random), signs, coordinates };
}

/** Random entries, and a diagonal that outweighs them: quasi-definite under every order of elimination. */
function dominant({ size, columnStart, row }: SymmetricPattern, signs: Int8Array, random: Random) {
  const values = new Float64Array(row.length);
  const sums = new Float64Array(size).fill(0.1);
  for (let j = 0; j < size; j++) {
    for (let at = columnStart[j] + 1; at < columnStart[j + 1]; at++) {
      values[at] = 2 * random() - 1;
      sums[j] += Math.abs(values[at]);
      sums[row[at]] += Math.abs(values[at]);
    }
  }
  for (let j = 0; j < size; j++) values[columnStart[j]] = signs[j] * sums[j];
  return values;
}
