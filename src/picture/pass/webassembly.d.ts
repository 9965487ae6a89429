// The few parts of WebAssembly that the pass uses (the project is typed without a browser's library).
declare namespace WebAssembly {
  class Memory {
    constructor(descriptor: { initial: number });
    readonly buffer: ArrayBuffer;
    grow(pages: number): number;
  }
  class Module {
    constructor(bytes: Uint8Array);
  }
  class Instance {
    constructor(module: Module, imports: { env: { memory: Memory } });
    readonly exports: Record<string, unknown>;
  }
}
