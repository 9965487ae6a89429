import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { inLanes } from '../lanes';
import { lasts } from '../lasting';
import type { Pool } from '../pool';
import { contentOf, damaged, type Stores } from './content';

export interface BlobReading extends Stores {
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
  const { pool, cache, signal } = how;
  const content = await contentOf(oid, file, how);
  if (content.lost) return [content.lost];
  const { pointer, sha256 } = content;
  // a content may have been read where it lay in the book's folder
  const name = pointer?.oid ?? sha256;
  const cached = name === undefined ? null : cache?.facts(name);
  const facts = cached ?? (await pool.facts(content.file, signal, sha256));
  // the store's own file stays
  await fs.rm(file, { force: true });
  if (pointer && facts[0].sha256 && facts[0].sha256 !== pointer.oid) return [damaged()];
  if (lasts(facts) && facts[0].sha256) cache?.rememberBlob(oid, facts[0].sha256, cached ? null : facts);
  return facts;
}
