import { Unusual } from './unusual';

/** 0xFF in coded data is followed by a zero, so that it is no marker (T.81, section F.1.2.3). */
const MARK = 0xff;
const isRestart = (code: number) => code >= 0xd0 && code <= 0xd7;

/** The coded data of a scan, without what keeps them from being taken for markers. */
export interface ScanData {
  /** Zeros stand behind the end, as many as a block can have. */
  bytes: Uint8Array;
  /** Where each part between restart markers ends in them. */
  ends: number[];
  /** Where the file goes on: at a marker. */
  next: number;
}

/** Zero bytes behind the end: more than a block has, after each of which a reader looks whether it went too far. */
const BEYOND = 512;

/** @throws Unusual where the data break off, or restart markers are not in their order */
export function unstuffed(file: Buffer, from: number): ScanData {
  const end = scanEnd(file, from);
  const bytes = new Uint8Array(end - from + BEYOND);
  const ends: number[] = [];
  let to = 0;
  for (let at = from; at < end; at++) {
    const byte = file[at];
    if (byte !== MARK) bytes[to++] = byte;
    else if (file[at + 1] === 0) {
      bytes[to++] = MARK;
      at++;
    } else if (at + 1 < end && file[at + 1] !== MARK) {
      if ((file[++at] & 7) !== ends.length % 8) throw new Unusual('restart markers in another order');
      ends.push(to);
    }
  }
  ends.push(to);
  return { bytes: bytes.subarray(0, to + BEYOND), ends, next: end };
}

/** The first marker from there on that is no restart. @throws Unusual where there is none */
export function scanEnd(file: Buffer, from: number): number {
  for (let at = from; ; ) {
    const mark = file.indexOf(MARK, at);
    if (mark < 0 || mark + 1 >= file.length) throw new Unusual('it breaks off');
    const code = file[mark + 1];
    if (code !== 0 && code !== MARK && !isRestart(code)) return mark;
    at = code === MARK ? mark + 1 : mark + 2;
  }
}

/** Coded data as they stand in a file. */
export function stuffed(data: Uint8Array): Buffer {
  let marks = 0;
  for (let at = 0; at < data.length; at++) if (data[at] === MARK) marks++;
  const out = Buffer.alloc(data.length + marks);
  for (let at = 0, to = 0; at < data.length; at++) {
    out[to++] = data[at];
    // a zero stands there already
    if (data[at] === MARK) to++;
  }
  return out;
}
