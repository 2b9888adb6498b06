import { analyse, type Factor, factor, type Symbolic, solve } from '../../../numerics/ldlt.ts';
import { type ElementMap, patternOfElements } from '../../../numerics/pattern.ts';
import type { Level } from '../bite.ts';
import type { ChainLink } from './link.ts';
import type { LinkLayout } from './link-layout.ts';

/**
 * All slices of a level at once, each with a few unknowns. A march solves them one after the other and is slow to find
 * what many have in common; the chain finds just that, and with it how the speed along the bar differs over the sections:
 * Newton's step of the sum of their potentials, block-tridiagonal.
 */
export interface Chain {
  readonly layout: LinkLayout;
  readonly slices: number;
  readonly map: ElementMap;
  readonly symbolic: Symbolic;
  readonly values: Float64Array;
  readonly right: Float64Array<ArrayBuffer>;
  factored: Factor | undefined;
}

export function chainFor(layout: LinkLayout, slices: number): Chain {
  const size = slices * layout.block;
  const pairs = Int32Array.from({ length: 2 * (slices - 1) }, (_, at) => (at + 1) >> 1);
  const places = Float64Array.from({ length: 2 * slices }, (_, at) => (at % 2 === 0 ? at / 2 : 0));
  const map = patternOfElements(size, pairs, 2, layout.block);
  return {
    ...{ layout, slices, map, symbolic: analyse(map.pattern, places) },
    values: new Float64Array(map.pattern.row.length),
    right: new Float64Array(size),
    factored: undefined,
  };
}

export interface ChainStep {
  /** Changes of all unknowns, block after block. */
  readonly changes: Float64Array;
  /** Those of the warping among them, m/s by the mean square of a mode. */
  readonly warping: Float64Array;
}

/** Newton's step from where the links were computed; nothing when it has none. */
export function chainStep(chain: Chain, links: readonly ChainLink[]): ChainStep | undefined {
  const { values, right, layout, slices } = chain;
  values.fill(0);
  right.fill(0);
  links.forEach((link, i) => {
    addLink(chain, link, i);
  });
  const last = slices - 1;
  for (let l = 0; l < layout.modes; l++) hold(chain, last * layout.block + layout.shapes + l);
  settleEmpty(chain);
  const factored = factor(chain.symbolic, values, chain.factored ? { into: chain.factored } : {});
  if (!factored.ok) return undefined;
  chain.factored = factored.value;
  const changes = solve(factored.value, right);
  if (!changes.every(Number.isFinite)) return undefined;
  return { changes, warping: changes.filter((_, at) => isWarping(layout, at)) };
}

const isWarping = ({ block, shapes }: LinkLayout, at: number): boolean =>
  at % block >= shapes && at % block < block - 1;

/** The first link has no slice before it, and stands in the first half of the first pair; the others in the second half of theirs. */
function addLink(
  { layout, map, values, right }: Chain,
  { length, slope, curvature }: ChainLink,
  i: number,
): void {
  const { block, size, own } = layout;
  const start = i === 0 ? own : 0;
  const pair = Math.max(0, i - 1);
  const slotOf = map.slot.subarray(pair * size * size, (pair + 1) * size * size);
  for (let row = start; row < size; row++) {
    right[pair * block + row - start] -= length * slope[row];
    for (let column = start; column <= row; column++)
      values[slotOf[(row - start) * size + column - start]] += length * curvature[row * size + column];
  }
}

/** Fixes an unknown: the bar leaves the last slice with one speed. */
function hold({ map: { pattern }, values, right }: Chain, unknown: number): void {
  const { columnStart, row } = pattern;
  for (let column = 0; column <= unknown; column++) {
    for (let at = columnStart[column]; at < columnStart[column + 1]; at++)
      if (column === unknown || row[at] === unknown) values[at] = 0;
  }
  right[unknown] = 0;
}

/** Unknowns that nothing moves, such as the shape of a change that was none; and a breath of stiffness for the others. */
function settleEmpty({ map: { pattern }, values }: Chain): void {
  for (let i = 0; i < pattern.size; i++) {
    const at = pattern.columnStart[i];
    values[at] = values[at] > 0 ? values[at] * (1 + 1e-8) : 1;
  }
}

/** Moves velocities, rates and warping of a level by `share` of the step. */
export function followStep(
  { layout }: Chain,
  level: Level,
  links: readonly ChainLink[],
  { changes }: ChainStep,
  share: number,
): void {
  const { block, shapes, modes } = layout;
  links.forEach((link, i) => {
    const { velocity } = level.slices[i];
    for (let a = 0; a < shapes; a++) {
      const part = share * changes[i * block + a];
      const first = a * velocity.length;
      for (let at = 0; at < velocity.length; at++) velocity[at] += part * link.shapes[first + at];
    }
    for (let l = 0; l < modes; l++) level.warping[l][i + 1] += share * changes[i * block + shapes + l];
    level.slices[i].along += share * changes[(i + 1) * block - 1];
  });
}
