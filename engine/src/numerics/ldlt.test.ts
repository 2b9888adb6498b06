import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { analyse, factor, solve } from './ldlt.ts';
import { plainFactor, plainSolve } from './ldlt-plain.ts';
import { patternOfElements } from './pattern.ts';
import { quasiDefinite, type System } from './quasi-definite.fixture.ts';
import { seededRandom } from './random.ts';
import { residualOf, solveRefined } from './refinement.ts';
import { mixedStrip } from './strip.fixture.ts';

const systems = fc
  .record({
    size: fc.integer({ min: 1, max: 90 }),
    edges: fc.integer({ min: 0, max: 260 }),
    seed: fc.integer(),
  })
  .map(({ size, edges, seed }) => quasiDefinite(size, edges, seededRandom(seed)));

const waves = (size: number) => Float64Array.from({ length: size }, (_, i) => Math.sin(i + 1));

const largest = (row: Iterable<number>) =>
  Array.from(row).reduce((most, x) => Math.max(most, Math.abs(x)), 0);

const difference = (a: Float64Array, b: Float64Array) => largest(a.map((x, i) => x - b[i]));

test('what was solved gives the right-hand side back', () => {
  fc.assert(
    fc.property(systems, ({ pattern, values, signs }) => {
      const rhs = waves(pattern.size);
      const x = solve(must(factor(analyse(pattern), values, { signs })), rhs);
      // Diagonally dominant with margin 0.1: x ≤ 10, row sums ≤ 20 or so, a few hundred roundings.
      expect(largest(residualOf(pattern, values, x, rhs, new Float64Array(pattern.size)))).toBeLessThan(
        1e-11,
      );
    }),
  );
});

test('the factor by fronts and the plain factor give one answer', () => {
  fc.assert(
    fc.property(systems, ({ pattern, values }) => {
      const rhs = waves(pattern.size);
      const x = solve(must(factor(analyse(pattern), values)), rhs);
      expect(difference(x, plainSolve(plainFactor(pattern, values), rhs))).toBeLessThan(1e-11);
    }),
  );
});

test('as many pivots are negative as eigenvalues, and no sign is wrong', () => {
  fc.assert(
    fc.property(systems, ({ pattern, values, signs }) => {
      const result = must(factor(analyse(pattern), values, { signs }));
      // Gershgorin: each disc of a dominant matrix keeps to the side of its diagonal entry.
      expect(result.negative).toBe(signs.filter((s) => s < 0).length);
      expect(result.wrongSigns).toEqual([]);
    }),
  );
});

test('numbering the unknowns otherwise numbers the answer otherwise', () => {
  fc.assert(
    fc.property(systems, fc.integer(), ({ pattern, values }, seed) => {
      const random = seededRandom(seed);
      const rank = Array.from({ length: pattern.size }, () => random());
      const byRank = rank.map((_, i) => i).sort((a, b) => rank[a] - rank[b]);
      const to = new Int32Array(pattern.size);
      byRank.forEach((i, k) => {
        to[i] = k;
      });
      const other = renumbered({ pattern, values }, to);
      const rhs = waves(pattern.size);
      const x = solve(must(factor(analyse(pattern), values)), rhs);
      const y = solve(
        must(factor(analyse(other.pattern), other.values)),
        Float64Array.from(byRank, (i) => rhs[i]),
      );
      expect(
        difference(
          x,
          Float64Array.from(to, (k) => y[k]),
        ),
      ).toBeLessThan(1e-11);
    }),
  );
});

function renumbered({ pattern, values }: Pick<System, 'pattern' | 'values'>, to: Int32Array) {
  const ends: number[] = [];
  const entries: number[] = [];
  for (let j = 0; j < pattern.size; j++) {
    for (let at = pattern.columnStart[j]; at < pattern.columnStart[j + 1]; at++) {
      ends.push(to[pattern.row[at]], to[j]);
      entries.push(values[at]);
    }
  }
  const map = patternOfElements(pattern.size, ends, 2);
  const moved = new Float64Array(map.pattern.row.length);
  entries.forEach((value, e) => {
    moved[map.slot[4 * e + 1]] += value;
  });
  return { pattern: map.pattern, values: moved };
}

test('a strip of velocities and pressures is solved alike with and without coordinates', () => {
  const { pattern, values, signs, coordinates } = mixedStrip(9, 31);
  const rhs = waves(pattern.size);
  const plain = plainSolve(plainFactor(pattern, values), rhs);
  for (const symbolic of [analyse(pattern), analyse(pattern, coordinates)]) {
    const result = must(factor(symbolic, values, { signs }));
    expect(result.negative).toBe(9 * 31);
    expect(result.wrongSigns).toEqual([]);
    const { x, residual } = must(solveRefined(result, values, rhs));
    expect(residual).toBeLessThan(1e-14);
    // Condition about 1e5 (viscosity over three decades), so eleven digits agree.
    expect(difference(x, plain) / largest(plain)).toBeLessThan(1e-11);
  }
});

test('twice as fine in both directions, the factor grows little more than fourfold', () => {
  const growth = (withCoordinates: boolean) => {
    const [coarse, fine] = [24, 48].map((side) => {
      const { pattern, coordinates } = mixedStrip(side, side);
      return analyse(pattern, withCoordinates ? coordinates : undefined).panelStart.at(-1) ?? 0;
    });
    return fine / coarse;
  };
  // N log N for nested dissection on a square grid (George 1973), a factor of 8 for a band.
  expect(growth(true)).toBeLessThan(6);
  expect(growth(false)).toBeLessThan(6);
});

test('a pivot of the wrong sign is reported with its unknown', () => {
  fc.assert(
    fc.property(systems, fc.nat(), ({ pattern, values, signs }, pick) => {
      const culprit = pick % pattern.size;
      const expected = signs.slice();
      expected[culprit] *= -1;
      expect(must(factor(analyse(pattern), values, { signs: expected })).wrongSigns).toEqual([culprit]);
      expected[culprit] = 0;
      expect(must(factor(analyse(pattern), values, { signs: expected })).wrongSigns).toEqual([]);
    }),
  );
});

test('a floating body has no temperature level: its Laplacian is refused, its last pivot named', () => {
  const across = 25;
  const quads: number[] = [];
  for (let n = 0; n < across * (across - 1); n++) {
    if (n % across < across - 1) quads.push(n, n + 1, n + across + 1, n + across);
  }
  const { pattern, slot } = patternOfElements(across * across, quads, 4);
  const values = new Float64Array(pattern.row.length);
  const stiffness = [4, -1, -2, -1, -1, 4, -1, -2, -2, -1, 4, -1, -1, -2, -1, 4];
  for (let at = 0; at < slot.length; at++) {
    const [i, j] = [Math.floor((at % 16) / 4), at % 4];
    if (j <= i) values[slot[at]] += stiffness[at % 16] / 6;
  }
  const symbolic = analyse(pattern);
  const result = factor(symbolic, values);
  expect(result.ok).toBe(false);
  if (result.ok) return;
  expect(result.failure.unknown).toBe(symbolic.unknown.at(-1));
  expect(Math.abs(result.failure.pivot)).toBeLessThan(1e-12);
  expect(result.failure.reason).toContain('singular');
});

test('a zero on the diagonal and a value that is not a number are refused', () => {
  const { pattern } = patternOfElements(2, [0, 1], 2);
  const refused = factor(analyse(pattern), [0, 0, 0]);
  expect(refused.ok ? undefined : refused.failure.pivot).toBe(0);
  expect(factor(analyse(pattern), [1, Number.NaN, 1]).ok).toBe(false);
});

test('several right-hand sides at once, in place, give what each gives alone', () => {
  const { pattern, values } = mixedStrip(4, 7);
  const n = pattern.size;
  const result = must(factor(analyse(pattern), values));
  const both = waves(2 * n);
  const alone = [solve(result, both.slice(0, n)), solve(result, both.slice(n))];
  expect(solve(result, both, both)).toBe(both);
  expect(both).toEqual(Float64Array.of(...alone[0], ...alone[1]));
});

test('a factor in the storage of an older one is the same to the last bit', () => {
  const { pattern, values, coordinates } = mixedStrip(7, 11);
  const symbolic = analyse(pattern, coordinates);
  const doubled = must(
    factor(
      symbolic,
      values.map((v) => 2 * v),
    ),
  );
  const fresh = must(factor(symbolic, values));
  const reused = must(factor(symbolic, values, { into: doubled }));
  expect(reused.lower).toBe(doubled.lower);
  expect(reused.lower).toEqual(fresh.lower);
});

test('refinement mends a factor of slightly older values, and says when it cannot', () => {
  const { pattern, values } = mixedStrip(5, 9);
  const rhs = waves(pattern.size);
  const old = must(factor(analyse(pattern), values));
  const newer = values.map((v, i) => v * (1 + 1e-4 * Math.sin(i)));
  const mended = must(solveRefined(old, newer, rhs));
  expect(mended.iterations).toBeGreaterThan(0);
  const exact = plainSolve(plainFactor(pattern, newer), rhs);
  expect(difference(mended.x, exact) / largest(exact)).toBeLessThan(1e-8);
  const opposite = solveRefined(
    old,
    values.map((v) => -v),
    rhs,
  );
  expect(opposite.ok ? 0 : opposite.failure.residual).toBeGreaterThan(0.1);
});

test('an empty matrix and one without any coupling are factored', () => {
  const nothing = patternOfElements(0, [], 2).pattern;
  expect(solve(must(factor(analyse(nothing), [])), [])).toEqual(new Float64Array(0));
  const { pattern } = patternOfElements(100, [], 2);
  const x = solve(
    must(factor(analyse(pattern), new Float64Array(100).fill(4))),
    new Float64Array(100).fill(2),
  );
  expect(x).toEqual(new Float64Array(100).fill(0.5));
});
