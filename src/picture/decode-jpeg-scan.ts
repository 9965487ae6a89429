import { SOS, segmentsFrom } from './header/jpeg';
import { bufferSource } from './header/source';

/** Where the last scan of a JPEG's picture lies, and what in it looks as if it had been written over. */
export interface LastScan {
  /** Its entropy-coded data: first byte and the byte behind the last. */
  from: number;
  to: number;
  /** Whether the mark of the picture's end follows. */
  ended: boolean;
  /** Whether it holds runs of one byte, which coded data hardly ever do: they look like chance. */
  odd: boolean;
}

const MARK = 0xff;
const EOI = 0xd9;

/**
 * So many equal bytes in a row: what a disk or a copy loses is a sector of 512 or more. Even skies and blank pages have
 * shorter runs by the thousand, where the shortest codes are all zeros.
 */
const RUN = 256;

/** Null where the file has no scan. Earlier scans of a progressive picture are checked by the decoder itself. */
export function lastScan(bytes: Buffer): LastScan | null {
  let scan: LastScan | null = null;
  for (let at: number | null = behindHeader(bytes, 2); at !== null; at = behindHeader(bytes, scan.to)) {
    scan = scanAt(bytes, at);
    if (scan.to === bytes.length) break;
  }
  return scan;
}

/** Where the data of the next scan begin; null where none follows. */
function behindHeader(bytes: Buffer, from: number): number | null {
  for (const { marker, end } of segmentsFrom(bufferSource(bytes), from)) if (marker === SOS) return end;
  return null;
}

/** From one 0xFF to the next: behind it stands a zero (it was a byte of the data), a restart, another, or the end. */
function scanAt(bytes: Buffer, from: number): LastScan {
  let odd = false;
  for (let at = from; ; ) {
    const found = bytes.indexOf(MARK, at);
    const mark = found < 0 || found + 1 >= bytes.length ? bytes.length : found;
    odd ||= hasRun(bytes, at, mark);
    if (mark === bytes.length) return { from, to: mark, ended: false, odd };
    const code = bytes[mark + 1];
    if (code !== 0 && code !== MARK && (code < 0xd0 || code > 0xd7))
      return { from, to: mark, ended: endsBehind(bytes, mark), odd };
    at = code === MARK ? mark + 1 : mark + 2;
  }
}

/** Whether nothing but segments stands between `from` and the mark of the picture's end. */
function endsBehind(bytes: Buffer, from: number): boolean {
  let at = from;
  for (const { marker, end } of segmentsFrom(bufferSource(bytes), from)) {
    if (marker === SOS) return false;
    at = end;
  }
  while (bytes[at] === MARK && bytes[at + 1] === MARK) at++;
  return bytes[at] === MARK && bytes[at + 1] === EOI;
}

/** Any run of `RUN` bytes covers two neighbouring of these places and all between. */
function hasRun(bytes: Buffer, from: number, to: number): boolean {
  const step = RUN / 2;
  for (let at = from; at + step < to; at += step) {
    if (bytes[at] !== bytes[at + step]) continue;
    const start = runStart(bytes, at, from);
    let end = at;
    while (end < to && bytes[end] === bytes[at]) end++;
    if (end - start >= RUN) return true;
  }
  return false;
}

/** Where the run of equal bytes begins in which `at` lies. */
export function runStart(bytes: Buffer, at: number, from: number): number {
  let start = at;
  while (start > from && bytes[start - 1] === bytes[at]) start--;
  return start;
}
