import { strideOf } from '../front.ts';
import { type FrontKernel, type KernelSize, togetherAtMost } from '../front-kernel.ts';
import { bytesOf } from './base64.ts';
import { kernelBinary } from './kernel-binary.ts';
import { type WebAssemblyHost, webAssembly } from './web-assembly.ts';

/** What assembly/kernel.ts exports; addresses and strides count bytes. */
interface Exports {
  eliminate(
    panel: number,
    stride: number,
    order: number,
    pivots: number,
    unscaled: number,
    update: number,
    updateStride: number,
  ): void;
  addUpdate(
    child: number,
    childStride: number,
    left: number,
    rows: number,
    panel: number,
    stride: number,
    pivots: number,
    update: number,
    updateStride: number,
  ): void;
  readonly forward: Substitute;
  readonly backward: Substitute;
}

type Substitute = (
  panel: number,
  stride: number,
  order: number,
  pivots: number,
  rights: number,
  first: number,
  border: number,
) => void;

const pageSize = 65536;

/** Compiled once, on first use. */
let compiled: object | undefined;

/** The kernel in WebAssembly with memory of its own, or undefined where the host has none or too little. */
export function simdKernel(size: KernelSize): FrontKernel | undefined {
  const host = webAssembly();
  if (!host) return undefined;
  try {
    return kernelIn(host, size);
  } catch {
    return undefined;
  }
}

function kernelIn(host: WebAssemblyHost, size: KernelSize): FrontKernel {
  compiled ??= new host.Module(bytesOf(kernelBinary));
  const { memory, arrays, rights, rows, border } = laidOut(host, size);
  const wasm = new host.Instance(compiled, { env: { memory } }).exports as Exports;
  const updates = arrays.updates.byteOffset;
  const unscaled = arrays.unscaled.byteOffset;
  const pair = 16 * size.unknown.length;
  const substitute =
    (by: Substitute): FrontKernel['forward'] =>
    (panel, order, pivots, first, from, group) => {
      const x = rights.byteOffset + group * pair;
      by(8 * panel, 8 * strideOf(order), order, pivots, x, x + 16 * first, border + 4 * from);
    };
  return {
    name: 'simd',
    arrays,
    rights,
    lanes: 2,
    eliminate(panel, order, pivots, update) {
      const [stride, updateStride] = [8 * strideOf(order), 8 * strideOf(order - pivots)];
      wasm.eliminate(8 * panel, stride, order, pivots, unscaled, updates + 8 * update, updateStride);
    },
    addUpdate(from, left, row, panel, order, pivots, update) {
      const [child, own] = [updates + 8 * from, updates + 8 * update];
      const [childStride, stride, ownStride] = [strideOf(left), strideOf(order), strideOf(order - pivots)];
      const to = rows + 4 * row;
      wasm.addUpdate(child, 8 * childStride, left, to, 8 * panel, 8 * stride, pivots, own, 8 * ownStride);
    },
    forward: substitute(wasm.forward),
    backward: substitute(wasm.backward),
  };
}

/** Everything the kernel works on, in one memory that never grows; two numbers more, as it may read past a panel. */
function laidOut(host: WebAssemblyHost, size: KernelSize) {
  const { unknown, panelStart, largestPanel, workspaceSize, rowInParent, border } = size;
  const rightsSize = togetherAtMost * unknown.length;
  const lengths = [panelStart[panelStart.length - 1], largestPanel + 2, workspaceSize, rightsSize];
  const wholes = 8 * lengths.reduce((sum, length) => sum + length);
  const pages = Math.ceil((wholes + 4 * (rowInParent.length + border.length)) / pageSize);
  const memory = new host.Memory({ initial: pages, maximum: pages });
  const [lower, unscaled, updates, rights] = rowsIn(memory.buffer, lengths);
  const places = new Int32Array(memory.buffer, wholes);
  places.set(rowInParent);
  places.set(border, rowInParent.length);
  const rows = { rows: wholes, border: wholes + 4 * rowInParent.length };
  return { memory, arrays: { lower, unscaled, updates }, rights, ...rows };
}

/** Arrays of these lengths, one behind the other from address 0. */
function rowsIn(buffer: ArrayBuffer, lengths: readonly number[]): Float64Array<ArrayBuffer>[] {
  let at = 0;
  return lengths.map((length) => {
    const row = new Float64Array(buffer, at, length);
    at += row.byteLength;
    return row;
  });
}
