import fs from 'node:fs';
import { UnreadableError } from './unreadable';

/** Random access to a file's bytes, so that a header costs a few kilobytes of reading however large the file. */
export interface Source {
  readonly size: number;
  /** @throws UnreadableError `truncated` where the range leaves the file */
  bytes(offset: number, length: number): Buffer;
}

/** No header field that we copy out (profile, EXIF) may be longer than this. */
export const LONGEST_FIELD = 32 << 20;

export function bufferSource(buffer: Buffer): Source {
  return {
    size: buffer.length,
    bytes(offset, length) {
      checkRange(offset, length, buffer.length);
      return buffer.subarray(offset, offset + length);
    },
  };
}

const WINDOW = 1 << 16;

/** Reads an open file through one 64 KB window: header fields lie close together. */
export function fileSource(fd: number, size: number): Source {
  const window = Buffer.allocUnsafe(WINDOW);
  let start = 0;
  let filled = 0;
  return {
    size,
    bytes(offset, length) {
      checkRange(offset, length, size);
      if (length > WINDOW) {
        const whole = Buffer.allocUnsafe(length);
        if (readFully(fd, whole, offset) < length) throw truncated();
        return whole;
      }
      if (offset < start || offset + length > start + filled) {
        start = offset;
        filled = readFully(fd, window, offset);
        if (filled < length) throw truncated();
      }
      return Buffer.from(window.subarray(offset - start, offset - start + length));
    },
  };
}

/** Bytes that were read, fewer than wanted only where the file ends. */
export function readFully(fd: number, into: Buffer, offset: number): number {
  let got = 0;
  while (got < into.length) {
    const n = fs.readSync(fd, into, got, into.length - got, offset + got);
    if (n === 0) break;
    got += n;
  }
  return got;
}

function checkRange(offset: number, length: number, size: number): void {
  if (!(offset >= 0 && length >= 0 && Number.isSafeInteger(offset + length))) throw truncated();
  if (offset + length > size) throw truncated();
  if (length > LONGEST_FIELD)
    throw new UnreadableError('corrupt', 'A field of its header is implausibly long.');
}

export function truncated(): UnreadableError {
  return new UnreadableError(
    'truncated',
    'The file ends before its header says it should. Copy or export it again.',
  );
}

/** Whole numbers at an offset, in one byte order. */
export class Numbers {
  constructor(
    readonly source: Source,
    readonly bigEndian: boolean,
  ) {}

  u8(offset: number): number {
    return this.source.bytes(offset, 1)[0];
  }

  u16(offset: number): number {
    const b = this.source.bytes(offset, 2);
    return this.bigEndian ? b.readUInt16BE() : b.readUInt16LE();
  }

  u32(offset: number): number {
    const b = this.source.bytes(offset, 4);
    return this.bigEndian ? b.readUInt32BE() : b.readUInt32LE();
  }

  /** Beyond 2^53 the answer is inexact, which any range check then refuses. */
  u64(offset: number): number {
    const b = this.source.bytes(offset, 8);
    return Number(this.bigEndian ? b.readBigUInt64BE() : b.readBigUInt64LE());
  }

  text(offset: number, length: number): string {
    return this.source.bytes(offset, length).toString('latin1');
  }
}
