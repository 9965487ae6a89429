import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { LONGEST_POINTER, type Pointer, parsePointer } from '../../picture/header/pointer';
import { UnreadableError } from '../../picture/header/unreadable';
import { unreadableFacts } from '../../picture/unreadable-facts';
import type { PictureFacts, Unreadable } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { inLanes } from '../lanes';
import { lasts } from '../lasting';
import type { Pool } from '../pool';
import type { Blobs } from './blobs';
import type { Repository } from './repository';

export interface BlobReading {
  repository: Pick<Repository, 'commonDir'>;
  blobs: Pick<Blobs, 'extract'>;
  pool: Pick<Pool, 'facts'>;
  cache: FactsCache | null;
  signal?: AbortSignal;
  onProgress?: (done: number, total: number) => void;
}

/** More than there are readers, so that none of them waits for git. */
const READING = 4;

/**
 * Facts of every page of the contents that git calls `oids`, each content once: from the cache, else freshly read. A
 * large-file pointer stands for its picture where that lies in the repository's own store.
 */
export async function readBlobs(
  oids: Iterable<string>,
  how: BlobReading,
): Promise<Map<string, PictureFacts[]>> {
  const wanted = [...new Set(oids)];
  const facts = new Map<string, PictureFacts[]>();
  for (const oid of wanted) {
    const known = how.cache?.blobFacts(oid);
    if (known) facts.set(oid, known);
  }
  const unknown = wanted.filter(oid => !facts.has(oid));
  if (!unknown.length) return facts;
  const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'evengrey-'));
  try {
    await inLanes(unknown, READING, async oid => {
      how.signal?.throwIfAborted();
      facts.set(oid, await readOne(oid, path.join(folder, oid), how));
      how.onProgress?.(facts.size, wanted.length);
    });
  } finally {
    await fs.rm(folder, { recursive: true, force: true });
  }
  return facts;
}

async function readOne(oid: string, file: string, how: BlobReading): Promise<PictureFacts[]> {
  const { blobs, pool, cache, signal } = how;
  const content = await blobs.extract(oid, file, LONGEST_POINTER - 1);
  if (content === null) return [lost('not-fetched', NOT_IN_CLONE)];
  const pointer = Buffer.isBuffer(content) ? parsePointer(content.toString('utf8')) : null;
  const stored = pointer && (await storedFile(how.repository, pointer));
  if (pointer && !stored) return [lost('not-fetched', NOT_IN_STORE, 'lfs-pointer')];
  const cached = pointer ? cache?.facts(pointer.oid) : null;
  if (Buffer.isBuffer(content) && !stored) await fs.writeFile(file, content, { flag: 'wx' });
  const sha256 = Buffer.isBuffer(content) ? undefined : content.sha256;
  const facts = cached ?? (await pool.facts(stored ?? file, signal, sha256));
  if (!stored) await fs.rm(file, { force: true });
  if (pointer && facts[0].sha256 && facts[0].sha256 !== pointer.oid) return [lost('corrupt', DAMAGED)];
  if (lasts(facts) && facts[0].sha256) cache?.rememberBlob(oid, facts[0].sha256, cached ? null : facts);
  return facts;
}

const NOT_IN_CLONE =
  'This version of the picture is not in this clone, which holds only some of the contents. Fetch it with "git fetch --refetch --no-filter", or clone without a filter.';
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
