// no-unit-test: tested as one with pass.ts, against plain arithmetic
import binary from '../kernel/kernel.wasm';

/** What the kernel exports (see ../kernel/kernel.ts). */
export interface Kernel {
  reset(channels: number): void;
  grey8(width: number, rows: number, ranged: boolean): void;
  rgb8(width: number, rows: number, ranged: boolean): void;
  inks8(width: number, rows: number, ranged: boolean): void;
  greySingly(from: number, width: number, rows: number, masked: boolean, ranged: boolean): void;
  rgbSingly(from: number, width: number, rows: number, masked: boolean, ranged: boolean): void;
  inksSingly(from: number, width: number, rows: number, masked: boolean, ranged: boolean): void;
  findPlain(width: number, channels: number): void;
  unfindShades(width: number, rows: number, channels: number, step: number, masked: boolean): void;
  narrow(samples: number, channels: number): void;
  flatten8(pixels: number, channels: number, paper: number): number;
  flatten16(pixels: number, channels: number, paper: number): number;
  weigh(pixels: number, shift: number): void;
  isEqual(pixels: number): number;
  beginComparison(): void;
  compare(pixels: number, step: number): void;
  mostDifference(): number;
  sumOfDifferences(): number;
  /** Value of an exported constant or counter, unsigned. */
  value(name: Value): number;
  memory: ArrayBuffer;
}

type Value =
  | 'TILE_WIDTH'
  | 'LEVELS'
  | 'GREYS'
  | 'PAIRS'
  | 'SUMS'
  | 'COUNTS'
  | 'RANGES'
  | 'KINDS'
  | 'MASK'
  | 'TILE'
  | 'STORED'
  | 'NEAR'
  | 'FAR'
  | 'MIXES'
  | 'MIX_BITS'
  | 'END'
  | 'SHARES'
  | 'STEPS'
  | 'LAST_SUM'
  | 'RAMP'
  | 'LIGHTNESS'
  | 'NUMBERS'
  | 'spread'
  | 'inkTotal'
  | 'coarseness'
  | 'deepSpread'
  | 'deepTotal'
  | 'leftOut'
  | 'partial';

/** What of the kernel works on coded data, in a memory that its caller lays out (see ../kernel/coded.ts). */
export interface CodedKernel {
  /** Bytes from here on are free. */
  begins: number;
  unstuff(from: number, end: number, ends: number): number;
  beginRows(job: number): void;
  findRow(job: number, y: number): number;
  endRows(job: number): number;
  beginWriting(to: number): void;
  writeBlocks(job: number, from: number, to: number): void;
  endWriting(): number;
}

const PAGE = 65536;
let compiled: WebAssembly.Module | null = null;
let kernel: Kernel | null = null;

function instanceOn(memory: WebAssembly.Memory): WebAssembly.Instance {
  compiled ??= new WebAssembly.Module(binary);
  return new WebAssembly.Instance(compiled, { env: { memory } });
}

/** The kernel with a memory for coded data, which is let go with it. */
export function codedKernel(memory: WebAssembly.Memory): CodedKernel {
  const functions = instanceOn(memory).exports as unknown as Omit<CodedKernel, 'begins'>;
  // what the kernel itself keeps lies within the first page
  return { ...functions, begins: PAGE };
}

/** The kernel with its own memory: made on first use, then kept. One picture at a time. */
export function loadKernel(): Kernel {
  if (kernel) return kernel;
  const memory = new WebAssembly.Memory({ initial: 1 });
  const instance = instanceOn(memory);
  const exported = instance.exports as unknown as Record<string, { value: number }>;
  const value = (name: Value) => exported[name].value >>> 0;
  memory.grow(Math.ceil(value('END') / PAGE) - memory.buffer.byteLength / PAGE);
  const functions = instance.exports as unknown as Omit<Kernel, 'value' | 'memory'>;
  kernel = { ...functions, value, memory: memory.buffer };
  return kernel;
}
