import fs from 'node:fs';
import type { PictureFacts } from '../../shared/picture';
import { isSettled, now, type Stamp, sameStamp, stampOf } from '../cache/stamp';
import type { Pool } from '../pool';
import { nameOf } from './hash';
import type { Repository } from './repository';

/**
 * Facts of the content that git calls `oid`, read from a file in the book's folder that holds it byte for byte: git need
 * not unpack it. Whether it does is told by its bytes alone, for git's index can be told not to look, and a filter may have
 * made the file of something else. Null where the file holds another content or was touched meanwhile.
 */
export async function factsInFolder(
  file: string,
  { oid, size }: { oid: string; size: number },
  {
    repository,
    pool,
    signal,
  }: {
    repository: Pick<Repository, 'hash'>;
    pool: Pick<Pool, 'facts'>;
    signal?: AbortSignal;
  },
): Promise<PictureFacts[] | null> {
  const readAt = now();
  const before = stamped(file);
  if (before?.size !== size || !isSettled(before, readAt)) return null;
  const name = await nameOf(file, repository, signal).catch(() => null);
  signal?.throwIfAborted();
  if (name !== oid) return null;
  const facts = await pool.facts(file, signal);
  const after = stamped(file);
  return after && sameStamp(before, after) ? facts : null;
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
