// no-unit-test: index.test.ts and the outside checks work in it
import { type CodedKernel, codedKernel } from '../../../picture/pass/kernel';
import { Unusual } from './unusual';

const PAGE = 65536;

/** A memory that is larger is not kept for the next. */
const MOST_KEPT = 2 ** 26;

/** Memory in which the kernel works on the coded data of one JPEG at a time: laid out piece by piece. */
export class Workspace {
  readonly kernel: CodedKernel;
  private readonly memory = new WebAssembly.Memory({ initial: 1 });
  private used = 0;

  constructor() {
    this.kernel = codedKernel(this.memory);
    this.clear();
  }

  /** Begins anew: what was laid out before is lost. */
  clear(): void {
    this.used = this.kernel.begins;
  }

  /**
   * Where so many bytes begin, whatever they are. Views of the buffer that were taken before are of no use then.
   * @throws Unusual where there is no memory for them
   */
  room(bytes: number): number {
    const at = this.used;
    this.used = at + Math.ceil(bytes / 8) * 8;
    const missing = this.used - this.memory.buffer.byteLength;
    if (missing > 0) this.grow(missing);
    return at;
  }

  private grow(bytes: number): void {
    try {
      this.memory.grow(Math.ceil(bytes / PAGE));
    } catch {
      throw new Unusual('larger than there is memory for');
    }
  }

  /** Where these begin now. */
  holding(data: Uint8Array | Uint16Array | Int16Array | Uint32Array): number {
    const at = this.room(data.byteLength);
    this.bytes(at, data.byteLength).set(new Uint8Array(data.buffer, data.byteOffset, data.byteLength));
    return at;
  }

  bytes(at: number, length: number): Uint8Array {
    return new Uint8Array(this.memory.buffer, at, length);
  }

  get buffer(): ArrayBuffer {
    return this.memory.buffer;
  }
}

let kept: Workspace | null = null;

/** The memory for the next JPEG: made on first use, then kept. */
export function workspace(): Workspace {
  if (!kept || kept.buffer.byteLength > MOST_KEPT) kept = new Workspace();
  kept.clear();
  return kept;
}
