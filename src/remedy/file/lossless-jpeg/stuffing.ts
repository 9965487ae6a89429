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
  for (let at = from; at < end; ) {
    const found = file.indexOf(MARK, at);
    const mark = found < 0 || found > end ? end : found;
    bytes.set(file.subarray(at, mark), to);
    to += mark - at;
    at = mark;
    if (at === end) break;
    if (file[at + 1] === 0) {
      bytes[to++] = MARK;
      at += 2;
    } else if (file[at + 1] === MARK) at++;
    else {
      if ((file[at + 1] & 7) !== ends.length % 8) throw new Unusual('restart markers in another order');
      ends.push(to);
      at += 2;
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
  const bytes = Buffer.from(data.buffer, data.byteOffset, data.byteLength);
  let marks = 0;
  for (let at = bytes.indexOf(MARK); at >= 0; at = bytes.indexOf(MARK, at + 1)) marks++;
  const out = Buffer.alloc(bytes.length + marks);
  let to = 0;
  for (let at = 0; at < bytes.length; ) {
    const mark = bytes.indexOf(MARK, at);
    const end = mark < 0 ? bytes.length : mark + 1;
    to += bytes.copy(out, to, at, end);
    if (mark >= 0) to++;
    at = end;
  }
  return out;
}
