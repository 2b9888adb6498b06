/**
 * Times our sparse LDLᵀ and Eigen's SimplicialLDLT on the same matrices, in turns, and prints a table.
 *
 *     npx tsx test/bench/eigen/compare.ts [rounds]
 */
import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { analyse, type Factor, factor, solve } from '@bloomrail/engine/numerics/ldlt';
import { residualOf } from '@bloomrail/engine/numerics/refinement';
import { mixedStrip, type Strip } from '@bloomrail/engine/numerics/strip.fixture';
import { must } from '@bloomrail/engine/outcome/result';

interface Timing {
  readonly factorMs: number;
  readonly solveMs: number;
  readonly analyseMs: number;
  readonly residual: number;
}

const cases = [
  [16, 64],
  [32, 32],
  [32, 128],
  [64, 64],
] as const;

const heads = [
  'nodes',
  'unknowns',
  'factor, ours',
  'Eigen',
  'ratio',
  'solve, ours',
  'Eigen',
  'first analysis, ours',
  'later ones',
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
  for (const [across, along] of cases) console.log(await rowFor(program, across, along));
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

async function rowFor(program: string, across: number, along: number): Promise<string> {
  const strip = mixedStrip(across, along);
  const rhs = Float64Array.from({ length: strip.pattern.size }, (_, i) => Math.sin(i));
  const eigen = spawn(program, [written(strip, rhs)]);
  const lines = createInterface({ input: eigen.stdout })[Symbol.asyncIterator]();
  const us = ourTimer(strip, rhs);
  const first = us().analyseMs;
  for (let warm = 0; warm < 20; warm++) us();
  const [ours, theirs]: Timing[][] = [[], []];
  for (let round = 0; round < rounds; round++) {
    ours.push(us());
    theirs.push(await timedBy(eigen, lines));
  }
  eigen.stdin.end();
  return row(`${across} × ${along}`, strip.pattern.size, first, ours, theirs);
}

function written({ pattern, values }: Strip, rhs: Float64Array): string {
  const path = join(folder, `${pattern.size}.bin`);
  const head = Int32Array.of(pattern.size, values.length);
  const parts = [head, pattern.columnStart, pattern.row, values, rhs];
  writeFileSync(path, Buffer.concat(parts.map((p) => Buffer.from(p.buffer, p.byteOffset, p.byteLength))));
  return path;
}

function ourTimer({ pattern, values, signs, coordinates }: Strip, rhs: Float64Array): () => Timing {
  let into: Factor | undefined;
  const x = new Float64Array(rhs.length);
  return () => {
    const t0 = performance.now();
    const again = analyse(pattern, coordinates);
    const symbolic = into?.symbolic ?? again;
    const t1 = performance.now();
    into = must(factor(symbolic, values, { signs, ...(into ? { into } : {}) }));
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
function row(name: string, size: number, first: number, ours: Timing[], theirs: Timing[]): string {
  const ranked = (timings: Timing[], key: keyof Timing) => timings.map((t) => t[key]).sort((a, b) => a - b);
  const middle = (timings: Timing[], key: keyof Timing) => ranked(timings, key)[timings.length >> 1];
  const ms = (timings: Timing[], key: keyof Timing) =>
    `${middle(timings, key).toFixed(2)} (${ranked(timings, key)[0].toFixed(2)}) ms`;
  const ratio = middle(ours, 'factorMs') / middle(theirs, 'factorMs');
  const fastest = ranked(ours, 'factorMs')[0] / ranked(theirs, 'factorMs')[0];
  const cells = [name, size, ms(ours, 'factorMs'), ms(theirs, 'factorMs')];
  cells.push(`${ratio.toFixed(2)} (${fastest.toFixed(2)})`, ms(ours, 'solveMs'), ms(theirs, 'solveMs'));
  cells.push(`${first.toFixed(0)} ms`, ms(ours, 'analyseMs'), `${middle(theirs, 'analyseMs').toFixed(0)} ms`);
  cells.push(middle(ours, 'residual').toExponential(0), middle(theirs, 'residual').toExponential(0));
  return `| ${cells.join(' | ')} |`;
}
