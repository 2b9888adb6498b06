// Compiles the SIMD kernel of the sparse factorisation and writes it as text into the engine's sources:
//     node scripts/build-front-kernel.mjs
// With --print it only prints the text; a test compares.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const folder = join(dirname(fileURLToPath(import.meta.url)), '..', 'engine', 'src', 'numerics', 'front-simd');

const options = [
  '--optimizeLevel',
  '3',
  '--shrinkLevel',
  '0',
  '--converge',
  '--noAssert',
  '--runtime',
  'stub',
];
const host = ['--enable', 'simd', '--importMemory', '--noExportMemory'];
const output = {};
const { error, stderr } = await asc.main(
  ['kernel.ts', '--outFile', 'kernel.wasm', '--baseDir', join(folder, 'assembly'), ...options, ...host],
  { writeFile: (name, content) => Object.assign(output, { [name]: content }) },
);
if (error) {
  process.stderr.write(`${stderr.toString()}${error.message}\n`);
  process.exit(1);
}
const base64 = Buffer.from(output['kernel.wasm']).toString('base64');
const text = `/** Made from assembly/kernel.ts by scripts/build-front-kernel.mjs: WebAssembly in base64. */
export const kernelBinary =
  '${base64}';
`;
if (process.argv.includes('--print')) process.stdout.write(text);
else writeFileSync(join(folder, 'kernel-binary.ts'), text);
