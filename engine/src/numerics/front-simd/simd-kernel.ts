import { strideOf } from '../front.ts';
import type { FrontKernel, KernelSize } from '../front-kernel.ts';
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
}

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
  const { panelStart, largestPanel, workspaceSize, rowInParent } = size;
  const lengths = [panelStart[panelStart.length - 1], largestPanel + 2, workspaceSize];
  const bytes = 8 * lengths.reduce((sum, length) => sum + length) + 4 * rowInParent.length;
  const pages = Math.ceil(bytes / pageSize);
  const memory = new host.Memory({ initial: pages, maximum: pages });
  const [lower, unscaled, updates] = rowsIn(memory.buffer, lengths);
  const rowAddress = updates.byteOffset + updates.byteLength;
  new Int32Array(memory.buffer, rowAddress, rowInParent.length).set(rowInParent);
  compiled ??= new host.Module(bytesOf(kernelBinary));
  const wasm = new host.Instance(compiled, { env: { memory } }).exports as Exports;
  const updatesAt = updates.byteOffset;
  const unscaledAt = unscaled.byteOffset;
  return {
    name: 'simd',
    arrays: { lower, unscaled, updates },
    eliminate: (panel, order, pivots, update) =>
      wasm.eliminate(
        8 * panel,
        8 * strideOf(order),
        order,
        pivots,
        unscaledAt,
        updatesAt + 8 * update,
        8 * strideOf(order - pivots),
      ),
    addUpdate: (from, left, rows, panel, order, pivots, update) =>
      wasm.addUpdate(
        updatesAt + 8 * from,
        8 * strideOf(left),
        left,
        rowAddress + 4 * rows,
        8 * panel,
        8 * strideOf(order),
        pivots,
        updatesAt + 8 * update,
        8 * strideOf(order - pivots),
      ),
  };
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
