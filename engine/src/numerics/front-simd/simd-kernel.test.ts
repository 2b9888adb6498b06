import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, expect, test, vi } from 'vitest';
import { must } from '../../outcome/result.ts';
import { analyse, type Factor, factor, solve } from '../ldlt.ts';
import { quasiDefinite } from '../quasi-definite.fixture.ts';
import { seededRandom } from '../random.ts';
import { mixedStrip } from '../strip.fixture.ts';

const root = new URL('../../../../', import.meta.url);

afterEach(() => void vi.unstubAllGlobals());

test('the shipped binary is what the compiler makes of the source', () => {
  const script = ['scripts/build-front-kernel.mjs', '--print'];
  const made = execFileSync(process.execPath, script, { cwd: root, encoding: 'utf8' });
  expect(readFileSync(new URL('kernel-binary.ts', import.meta.url), 'utf8')).toBe(made);
});

/** L and D without the triangles above the diagonal, which hold nothing of meaning. */
function entriesOf({ symbolic, lower }: Factor): number[] {
  const { pivotStart, borderStart, panelStart } = symbolic;
  const entries: number[] = [];
  for (let f = 0; f + 1 < pivotStart.length; f++) {
    const pivots = pivotStart[f + 1] - pivotStart[f];
    const order = pivots + borderStart[f + 1] - borderStart[f];
    const stride = (panelStart[f + 1] - panelStart[f]) / pivots;
    for (let k = 0; k < pivots; k++) {
      const column = panelStart[f] + k * stride;
      entries.push(...lower.subarray(column + k, column + order));
    }
  }
  return entries;
}

const differing = (a: number[], b: number[]) => a.filter((x, i) => !Object.is(x, b[i])).length;

test('both kernels give the same bits, whatever the graph, the signs and the number of right-hand sides', () => {
  const sizes = { size: fc.integer({ min: 1, max: 150 }), edges: fc.integer({ min: 0, max: 600 }) };
  fc.assert(
    fc.property(
      fc.record({
        ...sizes,
        rights: fc.integer({ min: 1, max: 6 }),
        seed: fc.integer(),
        definite: fc.boolean(),
      }),
      (of) => {
        const { pattern, values } = quasiDefinite(of.size, of.edges, seededRandom(of.seed));
        if (of.definite) for (const at of pattern.columnStart.slice(0, -1)) values[at] = Math.abs(values[at]);
        const symbolic = analyse(pattern);
        const simd = must(factor(symbolic, values, { kernel: 'simd' }));
        const plain = must(factor(symbolic, values, { kernel: 'plain' }));
        expect([simd.kernel, plain.kernel]).toEqual(['simd', 'plain']);
        expect(differing(entriesOf(simd), entriesOf(plain))).toBe(0);
        const rhs = Float64Array.from({ length: of.rights * of.size }, (_, i) => Math.sin(i + 1));
        const together = solve(simd, rhs);
        expect(together).toEqual(solve(plain, rhs));
        for (let at = 0; at < rhs.length; at += of.size) {
          expect(together.slice(at, at + of.size)).toEqual(solve(simd, rhs.slice(at, at + of.size)));
        }
      },
    ),
  );
});

test('both kernels give the same bits of a graded mixed strip', () => {
  const { pattern, values, signs, coordinates } = mixedStrip(13, 37);
  const symbolic = analyse(pattern, coordinates);
  const [simd, plain] = (['simd', 'plain'] as const).map((kernel) =>
    must(factor(symbolic, values, { kernel, signs })),
  );
  expect(differing(entriesOf(simd), entriesOf(plain))).toBe(0);
});

/** A host as it is, but for one part that cannot be had. */
const without = (part: 'Module' | 'Memory') => {
  const { Module, Memory, Instance } = WebAssembly;
  const refused = () => {
    throw new RangeError(`${part} refused`);
  };
  return { Module, Memory, Instance, [part]: refused };
};

test.each([
  ['WebAssembly', undefined, 'plain'],
  ['SIMD in it', without('Module'), 'plain'],
  ['memory left', without('Memory'), 'plain'],
  ['lack of anything', WebAssembly, 'simd'],
])('a host without %s', async (_, host, kernel) => {
  vi.stubGlobal('WebAssembly', host);
  vi.resetModules();
  const afresh = await import('../ldlt.ts');
  const { pattern, values } = mixedStrip(7, 9);
  expect(must(afresh.factor(analyse(pattern), values)).kernel).toBe(kernel);
});

test('a small matrix is not worth memory of its own, unless asked for', () => {
  const { pattern, values } = mixedStrip(2, 3);
  expect(must(factor(analyse(pattern), values)).kernel).toBe('plain');
  expect(must(factor(analyse(pattern), values, { kernel: 'simd' })).kernel).toBe('simd');
});
