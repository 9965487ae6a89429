// no-unit-test: test/book/revisions/read.test.ts reads contents of every kind through it
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import { LONGEST_POINTER, type Pointer, parsePointer } from '../../picture/header/pointer';
import { UnreadableError } from '../../picture/header/unreadable';
import { unreadableFacts } from '../../picture/unreadable-facts';
import type { PictureFacts, Unreadable } from '../../shared/picture';
import { hashOf } from '../hash';
import type { Blobs } from './blobs';
import type { Repository } from './repository';
import { type Sized, unpackInto } from './stretches';

/** Where contents are kept. */
export interface Stores {
  repository: Pick<Repository, 'commonDir' | 'root' | 'env'>;
  blobs: Pick<Blobs, 'small'>;
  signal?: AbortSignal;
}

/** A picture's content as a file that can be read. */
export interface Content {
  /** The new file that was asked for, or the one in the store of large files. */
  file: string;
  /** Where it was worked out on the way. */
  sha256?: string;
  /** What git itself holds, where that only stands for the picture. */
  pointer: Pointer | null;
  lost?: undefined;
}

/**
 * Lays a content into a new file, or finds the picture that it is the large-file pointer of. `hashed`: its hash is wanted.
 * @throws NotInCloneError
 */
export async function contentOf(
  content: Sized,
  file: string,
  stores: Stores,
  { hashed = false }: { hashed?: boolean } = {},
): Promise<Content | { lost: PictureFacts }> {
  const { repository, signal } = stores;
  const text = await shortText(content, stores);
  const pointed = text && (await ofPointer(text.toString('utf8'), repository));
  if (pointed) return pointed;
  if (text) await fs.writeFile(file, text, { flag: 'wx' });
  else await unpackInto(repository, content, file, signal);
  return { file, sha256: hashed ? await hashOf(file, signal) : undefined, pointer: null };
}

/** The hash of a content itself, be it a pointer; `file`: a new one, for as long as it takes. @throws NotInCloneError */
export async function hashOfContent(content: Sized, file: string, stores: Stores): Promise<string> {
  const text = await shortText(content, stores);
  if (text) return createHash('sha256').update(text).digest('hex');
  await unpackInto(stores.repository, content, file, stores.signal);
  return hashOf(file, stores.signal).finally(() => fs.rm(file));
}

/** All of a content that may be a pointer; null where it is too long for one. */
const shortText = async ({ oid, size, path }: Sized, { blobs }: Stores): Promise<Buffer | null> =>
  size < LONGEST_POINTER ? blobs.small(oid, LONGEST_POINTER, path) : null;

/** What a large-file pointer stands for; null where the text is none. */
export async function ofPointer(
  text: string,
  repository: Stores['repository'],
): Promise<(Content & { pointer: Pointer }) | { lost: PictureFacts } | null> {
  const pointer = parsePointer(text);
  if (!pointer) return null;
  const file = await storedFile(repository, pointer);
  return file ? { file, pointer } : { lost: lost('not-fetched', NOT_IN_STORE, 'lfs-pointer') };
}

/** What is said of a large file that is not the one that its pointer names. */
export const damaged = (): PictureFacts => lost('corrupt', DAMAGED);

const NOT_IN_STORE =
  'Git holds only the large-file pointer of this version, and the picture itself has not been fetched. Fetch it with "git lfs fetch --all".';
const DAMAGED =
  'The large file in the local store is not the one that its pointer names. Put it right with "git lfs fsck" and "git lfs fetch".';

const lost = (reason: Unreadable['reason'], text: string, format?: PictureFacts['format']): PictureFacts =>
  unreadableFacts(new UnreadableError(reason, text, format), '');

/** Where the local store of large files keeps a content (git-lfs specification, "Intercepting Git"); null: it does not. */
async function storedFile(
  { commonDir }: Pick<Repository, 'commonDir'>,
  { oid, size }: Pointer,
): Promise<string | null> {
  const file = path.join(commonDir, 'lfs', 'objects', oid.slice(0, 2), oid.slice(2, 4), oid);
  const stat = await fs.lstat(file).catch(() => null);
  return stat?.isFile() && stat.size === size ? file : null;
}
