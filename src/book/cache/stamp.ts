import type { BigIntStats } from 'node:fs';

/** What tells a file from a later state of itself without opening it. Times in ns since 1970. */
export interface Stamp {
  size: number;
  mtime: bigint;
  ctime: bigint;
  inode: bigint;
}

export const stampOf = (stat: BigIntStats): Stamp => ({
  size: Number(stat.size),
  mtime: stat.mtimeNs,
  ctime: stat.ctimeNs,
  inode: stat.ino,
});

export const sameStamp = (x: Stamp, y: Stamp): boolean =>
  x.size === y.size && x.mtime === y.mtime && x.ctime === y.ctime && x.inode === y.inode;

const SECOND = 1_000_000_000n;
/** Clocks of file systems tick up to every 10 ms (a kernel's jiffy), the coarse ones (FAT) every 2 s. */
const FINE = SECOND / 10n;
const COARSE = 2n * SECOND;

/**
 * A file read at `readAt` can have been changed once more in the same tick of the file system's clock, with size and
 * times unchanged. Its stamp can be trusted only if its last change was well before the reading.
 */
export function isSettled(stamp: Stamp, readAt: bigint): boolean {
  const longAgo = (change: bigint) => readAt - change > (change % SECOND === 0n ? COARSE : FINE);
  return longAgo(stamp.mtime) && longAgo(stamp.ctime);
}

export const now = (): bigint => BigInt(Date.now()) * 1_000_000n;
