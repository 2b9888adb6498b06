/** What the engine needs of WebAssembly, which browsers, workers and Node all bring but the language does not declare. */
export interface WebAssemblyHost {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Memory: new (size: { initial: number; maximum: number }) => Memory;
  readonly Instance: new (
    module: object,
    imports: { env: { memory: Memory } },
  ) => { readonly exports: object };
}

interface Memory {
  readonly buffer: ArrayBuffer;
}

/** The host's WebAssembly, if it has any. */
export function webAssembly(): WebAssemblyHost | undefined {
  return (globalThis as unknown as { readonly WebAssembly?: WebAssemblyHost }).WebAssembly;
}
