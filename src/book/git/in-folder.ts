import fs from 'node:fs';
import type { PictureFacts } from '../../shared/picture';
import { isSettled, now, type Stamp, sameStamp, stampOf } from '../cache/stamp';
import { wasOpened } from '../lasting';
import type { Pool } from '../pool';
import type { Sized } from './stretches';

/**
 * Facts of the content that git calls `oid`, read from a file in the book's folder that holds it byte for byte: git need
 * not unpack it. Whether it does is told by its bytes alone, for git's index can be told not to look, and a filter may have
 * made the file of something else. Null where the file holds another content, was touched meanwhile, or was not read in time.
 */
export async function factsInFolder(
  file: string,
  { oid, size }: Pick<Sized, 'oid' | 'size'>,
  { pool, signal }: { pool: Pick<Pool, 'factsOf'>; signal?: AbortSignal },
): Promise<PictureFacts[] | null> {
  const before = settledStamp(file, size);
  if (!before) return null;
  const facts = await pool.factsOf({ file, oid }, signal);
  const after = stamped(file);
  const isTold = facts && wasOpened(facts) && facts[0].unreadable?.reason !== 'timeout';
  return isTold && after && sameStamp(before, after) ? facts : null;
}

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
