// no-unit-test: test/cli/actions/since.test.ts runs the built program in repositories of every kind
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import fs from 'node:fs/promises';
import { LONGEST_POINTER, parsePointer } from '../../picture/header/pointer';
import { hashOf } from '../hash';
import type { Blobs } from './blobs';
import type { Repository } from './repository';

/**
 * Whether a regular file holds what git calls `oid`, byte for byte, or the picture that a large-file pointer of that name
 * stands for. Filters that would change a text on its way are none for pictures.
 */
export async function holds(
  file: string,
  oid: string,
  { hash }: Pick<Repository, 'hash'>,
  blobs: Pick<Blobs, 'small'>,
  signal?: AbortSignal,
): Promise<boolean> {
  const { size } = await fs.stat(file);
  const object = createHash(hash).update(`blob ${size}\0`);
  for await (const chunk of createReadStream(file)) {
    signal?.throwIfAborted();
    object.update(chunk);
  }
  if (object.digest('hex') === oid) return true;
  const text = await blobs.small(oid, LONGEST_POINTER - 1);
  const pointer = text && parsePointer(text.toString('utf8'));
  return pointer ? pointer.size === size && (await hashOf(file, signal)) === pointer.oid : false;
}
