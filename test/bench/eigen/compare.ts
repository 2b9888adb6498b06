/**
 * Times our sparse LDLᵀ, with both kernels, and Eigen's SimplicialLDLT on the same matrices, in turns, and prints a
 * table.
 *
 *     npx tsx test/bench/eigen/compare.ts [rounds]
 */
import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { analyse, type Factor, factor, solve } from '@bloomrail/engine/numerics/ldlt';
import { planeMesh } from '@bloomrail/engine/numerics/quasi-definite.fixture';
import { residualOf } from '@bloomrail/engine/numerics/refinement';
import { mixedStrip, type Strip } from '@bloomrail/engine/numerics/strip.fixture';
import { must } from '@bloomrail/engine/outcome/result';

interface Timing {
  readonly factorMs: number;
  readonly solveMs: number;
  readonly analyseMs: number;
  readonly residual: number;
}

const cases: readonly (readonly [string, Strip])[] = [
  ['plane 10 × 20', planeMesh(10, 20)],
  ['plane 15 × 20', planeMesh(15, 20)],
  ['plane 20 × 25', planeMesh(20, 25)],
  ['plane 20 × 35', planeMesh(20, 35)],
  ['strip 16 × 64', mixedStrip(16, 64)],
  ['strip 32 × 32', mixedStrip(32, 32)],
  ['strip 32 × 128', mixedStrip(32, 128)],
  ['strip 64 × 64', mixedStrip(64, 64)],
];

const heads = [
  'nodes',
  'unknowns',
  'factor, SIMD',
  'TypeScript',
  'Eigen',
  'SIMD to Eigen',
  'TypeScript to Eigen',
  'solve, SIMD',
  'TypeScript',
  'Eigen',
  'later analyses, ours',
  'Eigen',
  'residual, ours',
  'Eigen',
];

const rounds = Number(process.argv[2] ?? 40);
const folder = mkdtempSync(join(tmpdir(), 'ldlt-'));
try {
  const program = compiled();
  console.log(`| ${heads.join(' | ')} |`);
  console.log(`|${'---|'.repeat(heads.length)}`);
  for (const [name, system] of cases) console.log(await rowFor(program, name, system));
} finally {
  rmSync(folder, { recursive: true });
}

function compiled(): string {
  const program = join(folder, 'ldlt-eigen');
  const source = join(import.meta.dirname, 'ldlt-eigen.cpp');
  const flags = ['-O3', '-march=native', '-DNDEBUG', '-I/usr/include/eigen3', source, '-o', program];
  const build = spawnSync(process.env.CXX ?? 'g++', flags, { encoding: 'utf8' });
  if (build.status === 0) return program;
  console.error(build.stderr ?? build.error?.message);
  console.error('Needs g++ and Eigen 3: apt-get install g++ libeigen3-dev');
  process.exit(1);
}

async function rowFor(program: string, name: string, system: Strip): Promise<string> {
  const rhs = Float64Array.from({ length: system.pattern.size }, (_, i) => Math.sin(i));
  const eigen = spawn(program, [written(system, rhs)]);
  const lines = createInterface({ input: eigen.stdout })[Symbol.asyncIterator]();
  const [withSimd, without] = [ourTimer(system, rhs, 'simd'), ourTimer(system, rhs, 'plain')];
  for (let warm = 0; warm < 20; warm++) [withSimd(), without()];
  const [simd, plain, theirs]: Timing[][] = [[], [], []];
  for (let round = 0; round < rounds; round++) {
    simd.push(withSimd());
    plain.push(without());
    theirs.push(await timedBy(eigen, lines));
  }
  eigen.stdin.end();
  return row(name, system.pattern.size, simd, plain, theirs);
}

function written({ pattern, values }: Strip, rhs: Float64Array): string {
  const path = join(folder, `${pattern.size}.bin`);
  const head = Int32Array.of(pattern.size, values.length);
  const parts = [head, pattern.columnStart, pattern.row, values, rhs];
  writeFileSync(path, Buffer.concat(parts.map((p) => Buffer.from(p.buffer, p.byteOffset, p.byteLength))));
  return path;
}

function ourTimer(system: Strip, rhs: Float64Array, kernel: Factor['kernel']): () => Timing {
  const { pattern, values, signs, coordinates } = system;
  let into: Factor | undefined;
  const x = new Float64Array(rhs.length);
  return () => {
    const t0 = performance.now();
    const again = analyse(pattern, coordinates);
    const symbolic = into?.symbolic ?? again;
    const t1 = performance.now();
    into = must(factor(symbolic, values, { signs, kernel, ...(into ? { into } : {}) }));
    const t2 = performance.now();
    into = must(factor(symbolic, values, { signs, into }));
    const t3 = performance.now();
    solve(into, rhs, x);
    const t4 = performance.now();
    const left = residualOf(pattern, values, x, rhs, new Float64Array(rhs.length));
    const residual = left.reduce((most, r) => Math.max(most, Math.abs(r)), 0);
    return { factorMs: t3 - t2, solveMs: t4 - t3, analyseMs: t1 - t0, residual };
  };
}

async function timedBy(eigen: ChildProcessWithoutNullStreams, lines: AsyncIterator<string>): Promise<Timing> {
  eigen.stdin.write('\n');
  return JSON.parse((await lines.next()).value);
}

/** Middle and fastest of the rounds. */
function row(name: string, size: number, simd: Timing[], plain: Timing[], theirs: Timing[]): string {
  const ranked = (timings: Timing[], key: keyof Timing) => timings.map((t) => t[key]).sort((a, b) => a - b);
  const middle = (timings: Timing[], key: keyof Timing) => ranked(timings, key)[timings.length >> 1];
  const ms = (key: keyof Timing) => (timings: Timing[]) =>
    `${middle(timings, key).toFixed(3)} (${ranked(timings, key)[0].toFixed(3)}) ms`;
  const toEigen = (ours: Timing[]) => {
    const fastest = ranked(ours, 'factorMs')[0] / ranked(theirs, 'factorMs')[0];
    return `${(middle(ours, 'factorMs') / middle(theirs, 'factorMs')).toFixed(2)} (${fastest.toFixed(2)})`;
  };
  const all = [simd, plain, theirs];
  const cells = [name, size, ...all.map(ms('factorMs')), toEigen(simd), toEigen(plain)];
  cells.push(
    ...all.map(ms('solveMs')),
    ms('analyseMs')(simd),
    `${middle(theirs, 'analyseMs').toFixed(1)} ms`,
  );
  cells.push(middle(simd, 'residual').toExponential(0), middle(theirs, 'residual').toExponential(0));
  return `| ${cells.join(' | ')} |`;
}
