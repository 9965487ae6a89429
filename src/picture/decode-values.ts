import type { Channels } from './decode-layout';

/**
 * Stored values out of the decoder's bytes, to be kept as long as one likes. The WebAssembly build hands out a window on
 * its own memory, in which it puts other pictures once nobody holds that very buffer: from there they are copied.
 * @param depth as the decoder names it: `uchar`, `ushort`, `short`, `float`
 */
export function ownValues(data: Buffer, depth: string): Channels {
  const { buffer, byteOffset, length } =
    data.buffer instanceof SharedArrayBuffer ? new Uint8Array(data) : data;
  switch (depth) {
    case 'uchar':
      return new Uint8Array(buffer, byteOffset, length);
    case 'ushort':
      return new Uint16Array(buffer, byteOffset, length / 2);
    case 'short':
      return new Int16Array(buffer, byteOffset, length / 2);
    case 'float':
      return new Float32Array(buffer, byteOffset, length / 4);
    default:
      throw new Error(`unsupported sample depth ${depth}`);
  }
}
