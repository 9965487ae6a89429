import { Unusual } from './unusual';
import type { Workspace } from './workspace';

/** 0xFF in coded data is followed by a zero, so that it is no marker (T.81, section F.1.2.3). */
const MARK = 0xff;
const isRestart = (code: number) => code >= 0xd0 && code <= 0xd7;

/** The coded data of a scan, without what keeps them from being taken for markers. */
export interface ScanData {
  /** Where they are. */
  workspace: Workspace;
  /** Where in it they begin, and how long they are; zeros stand behind the end, as many as a block can have. */
  at: number;
  length: number;
  /** Where in it each part between restart markers ends (u32, from `at` on), and how many there are. */
  endsAt: number;
  parts: number;
  /** Where the file goes on: at a marker. */
  next: number;
}

/** Zero bytes behind the end: more than a block has, after each of which a reader looks whether it went too far. */
const BEYOND = 512;
/** Ends are counted in bits, in 32 of them. */
const MOST_BYTES = 2 ** 29;

/** @param workspace where they are laid out @throws Unusual where the data break off, or restart markers are not in their order */
export function unstuffed(file: Buffer, from: number, workspace: Workspace): ScanData {
  const end = scanEnd(file, from);
  if (end - from >= MOST_BYTES) throw new Unusual('larger than is counted in bits');
  const at = workspace.room(end - from + BEYOND);
  // each marker takes two bytes
  const endsAt = workspace.room(2 * (end - from) + 8);
  workspace.bytes(at, end - from).set(file.subarray(from, end));
  const parts = workspace.kernel.unstuff(at, at + end - from, endsAt);
  if (parts === 0) throw new Unusual('restart markers in another order');
  const length = new Uint32Array(workspace.buffer, endsAt, parts)[parts - 1];
  workspace.bytes(at + length, end - from - length + BEYOND).fill(0);
  return { workspace, at, length, endsAt, parts, next: end };
}

/** The bytes of a scan with those behind their end, and where each part of them ends. */
export function seen({ workspace, at, length, endsAt, parts }: ScanData): {
  bytes: Uint8Array;
  ends: Uint32Array;
} {
  return {
    bytes: workspace.bytes(at, length + BEYOND),
    ends: new Uint32Array(workspace.buffer, endsAt, parts),
  };
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
