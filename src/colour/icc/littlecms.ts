import { instantiate, type Lcms } from 'lcms-wasm';
import wasm from 'lcms-wasm/dist/lcms.wasm';

/** LittleCMS in a memory of its own. After a crash inside it nothing in that memory can be trusted again. */
export class LittleCms {
  private broken = false;
  private constructor(private readonly lcms: Lcms) {}

  static async load(): Promise<LittleCms> {
    const silent = () => {};
    return new LittleCms(await instantiate({ wasmBinary: wasm, print: silent, printErr: silent }));
  }

  get usable(): boolean {
    return !this.broken;
  }

  /**
   * Runs `work` on the library.
   * @throws Error where the library crashes, or did before: load another
   */
  run<T>(work: (lcms: Lcms) => T): T {
    if (this.broken)
      throw new Error('the colour library has to be loaded again: a damaged ICC profile broke it');
    try {
      return work(this.lcms);
    } catch (error) {
      if (error instanceof IccError) throw error;
      this.broken = true;
      throw new IccError('the ICC profile is damaged: the colour library broke on it');
    }
  }
}

/** A profile that cannot be used, in plain words; the library itself is well. */
export class IccError extends Error {}
