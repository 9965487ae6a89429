import fs from 'node:fs';
import type { PictureFacts } from '../../shared/picture';
import { isSettled, now, type Stamp, sameStamp, stampOf } from '../cache/stamp';
import type { Pool } from '../pool';
import type { Sized } from './stretches';

/**
 * Facts of the content that git calls `oid`, read from a file in the book's folder that holds it byte for byte: git need
 * not unpack it. Whether it does is told by its bytes alone, for git's index can be told not to look, and a filter may have
 * made the file of something else. Null where the file holds another content or was touched meanwhile.
 */
export async function factsInFolder(
  file: string,
  { oid, size }: Sized,
  { pool, signal }: { pool: Pick<Pool, 'factsOf'>; signal?: AbortSignal },
): Promise<PictureFacts[] | null> {
  const before = settledStamp(file, size);
  if (!before) return null;
  const facts = await pool.factsOf({ file, oid }, signal);
  const after = stamped(file);
  return facts && wasOpened(facts) && after && sameStamp(before, after) ? facts : null;
}

/** What could not be opened says nothing of the content; a reader that was lost on it does. */
const wasOpened = ([{ sha256, unreadable }]: PictureFacts[]): boolean =>
  sha256 !== '' || unreadable?.reason === 'crashed' || unreadable?.reason === 'timeout';

/** Whether a file may hold a content of so many bytes. */
export const mayHold = (file: string, size: number): boolean => settledStamp(file, size) !== null;

function settledStamp(file: string, size: number): Stamp | null {
  const readAt = now();
  const stamp = stamped(file);
  return stamp?.size === size && isSettled(stamp, readAt) ? stamp : null;
}

/** Null where there is no regular file. */
function stamped(file: string): Stamp | null {
  const stat = lookedAt(file);
  return stat?.isFile() ? stampOf(stat) : null;
}

function lookedAt(file: string): fs.BigIntStats | undefined {
  try {
    return fs.lstatSync(file, { bigint: true, throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}
