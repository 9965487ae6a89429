// no-unit-test: test/book/revisions/read.test.ts reads contents of every kind through it
import fs from 'node:fs/promises';
import path from 'node:path';
import { LONGEST_POINTER, type Pointer, parsePointer } from '../../picture/header/pointer';
import { UnreadableError } from '../../picture/header/unreadable';
import { unreadableFacts } from '../../picture/unreadable-facts';
import type { PictureFacts, Unreadable } from '../../shared/picture';
import type { Blobs } from './blobs';
import { NotInCloneError } from './git';
import type { Repository } from './repository';

/** Where contents are kept. */
export interface Stores {
  repository: Pick<Repository, 'commonDir'>;
  blobs: Pick<Blobs, 'extract'>;
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
 * Lays what git calls `oid` into a new file, or finds the picture that it is the large-file pointer of. `hashed`: whether
 * its hash is wanted, by its size. @throws NotInCloneError
 */
export async function contentOf(
  oid: string,
  file: string,
  { repository, blobs }: Stores,
  hashed?: (size: number) => boolean,
): Promise<Content | { lost: PictureFacts }> {
  const content = await blobs.extract(oid, file, LONGEST_POINTER - 1, hashed);
  if (content === null) throw new NotInCloneError(null);
  if (!Buffer.isBuffer(content)) return { file, sha256: content.sha256, pointer: null };
  const pointed = await ofPointer(content.toString('utf8'), repository);
  if (pointed) return pointed;
  await fs.writeFile(file, content, { flag: 'wx' });
  return { file, pointer: null };
}

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
