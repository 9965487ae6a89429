// no-unit-test: test/book/git/in-folder.test.ts names files by it, test/cli/actions/since.test.ts asks it of repositories of every kind
import fs from 'node:fs';
import { gitName } from '../../picture/git-name';
import { LONGEST_POINTER, parsePointer } from '../../picture/header/pointer';
import { hashOf } from '../hash';
import { breather } from '../lanes';
import type { Blobs } from './blobs';
import type { Repository } from './repository';

const AT_ONCE = 1024 * 1024;

/**
 * What git calls a file's bytes as they are, whatever a filter would make of them. Reads at once and not by way of other
 * threads, which would want a turn beside busy readers; gives way to other work in between. @throws what the
 * file system says
 */
export async function nameOf(
  file: string,
  { hash }: Pick<Repository, 'hash'>,
  signal?: AbortSignal,
): Promise<string> {
  const opened = fs.openSync(file, 'r');
  try {
    const { size } = fs.fstatSync(opened);
    const object = gitName(hash, size);
    const chunk = Buffer.allocUnsafe(Math.min(AT_ONCE, size + 1));
    const breathe = breather();
    for (let left = size; left >= 0; ) {
      const bytesRead = fs.readSync(opened, chunk, 0, chunk.length, null);
      if (bytesRead === 0) break;
      object.update(chunk.subarray(0, bytesRead));
      left -= bytesRead;
      await breathe();
      signal?.throwIfAborted();
    }
    return object.digest('hex');
  } finally {
    fs.closeSync(opened);
  }
}

/** The bytes of a regular file of up to `most` bytes, where they are what git calls `oid`; else null. */
export function contentHeld(file: string, oid: string, most: number): Buffer | null {
  try {
    const stat = fs.lstatSync(file, { throwIfNoEntry: false });
    if (!stat?.isFile() || stat.size > most) return null;
    const bytes = fs.readFileSync(file);
    return gitName(oid, bytes.length).update(bytes).digest('hex') === oid ? bytes : null;
  } catch {
    return null;
  }
}

/**
 * Whether a regular file holds what git calls `oid`, byte for byte, or the picture that a large-file pointer of that name
 * stands for. Filters that would change a text on its way are none for pictures.
 */
export async function holds(
  file: string,
  oid: string,
  repository: Pick<Repository, 'hash'>,
  blobs: Pick<Blobs, 'small'>,
  signal?: AbortSignal,
): Promise<boolean> {
  if ((await nameOf(file, repository, signal)) === oid) return true;
  const text = await blobs.small(oid, LONGEST_POINTER - 1, file);
  const pointer = text && parsePointer(text.toString('utf8'));
  if (!pointer || fs.statSync(file).size !== pointer.size) return false;
  return (await hashOf(file, signal)) === pointer.oid;
}
