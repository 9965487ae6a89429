import { rmSync } from 'node:fs';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { LONGEST_POINTER } from '../../picture/header/pointer';
import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { inLanes } from '../lanes';
import { lasts } from '../lasting';
import type { Pool } from '../pool';
import { contentOf, damaged, type Stores } from './content';
import { NotInCloneError } from './git';
import { factsInFolder } from './in-folder';
import type { Repository } from './repository';
import { sizesOf } from './sizes';

export interface BlobReading extends Stores {
  repository: Repository;
  pool: Pick<Pool, 'facts'>;
  cache: FactsCache | null;
  /** Bytes of the contents, by what git calls them; left out: git is asked. */
  sizes?: ReadonlyMap<string, number>;
  signal?: AbortSignal;
  /** Told of each content as soon as it is read, while others still are. */
  onRead?: (oid: string, facts: readonly PictureFacts[]) => void;
  onProgress?: (done: number, total: number) => void;
}

/** More than there are readers, so that none of them waits for git. */
const READING = 4;

/** A content by what git calls it, and by a name that it has in the book: a file of that name may hold it. */
export interface NamedContent {
  oid: string;
  path: string;
}

/**
 * Facts of every page of contents, by what git calls these, each content once: from the cache, else freshly read, from the
 * book's folder where the content lies there. A large-file pointer stands for its picture where that lies in the
 * repository's own store. @throws NotInCloneError before anything is read, where a content is neither known nor there
 */
export async function readBlobs(
  contents: readonly NamedContent[],
  how: BlobReading,
): Promise<Map<string, PictureFacts[]>> {
  const wanted = new Map(contents.map(content => [content.oid, content]));
  const facts = new Map<string, PictureFacts[]>();
  for (const oid of wanted.keys()) {
    const known = how.cache?.blobFacts(oid);
    if (known) facts.set(oid, known);
  }
  const unknown = [...wanted.values()].filter(({ oid }) => !facts.has(oid));
  if (!unknown.length) return facts;
  const names = unknown.map(({ oid }) => oid);
  const sizes = how.sizes ?? (await sizesOf(how.repository, names, how.signal));
  const missing = unknown.find(({ oid }) => !sizes.has(oid));
  if (missing) throw new NotInCloneError(missing.path);
  const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'evengrey-'));
  try {
    await inLanes(unknown, READING, async content => {
      how.signal?.throwIfAborted();
      const { oid } = content;
      const read = await readOne({ ...content, size: sizes.get(oid)! }, path.join(folder, oid), how);
      facts.set(oid, read);
      how.onRead?.(oid, read);
      how.onProgress?.(facts.size, wanted.size);
    });
  } finally {
    await fs.rm(folder, { recursive: true, force: true });
  }
  return facts;
}

async function readOne(
  content: NamedContent & { size: number },
  file: string,
  how: BlobReading,
): Promise<PictureFacts[]> {
  const { cache, repository } = how;
  const { oid, size } = content;
  // what may be a pointer, and what may have been read under another name, is looked at before it is read
  if (size < LONGEST_POINTER || cache?.knowsSize(size)) return extracted(oid, file, how);
  const facts = await factsInFolder(path.join(repository.root, content.path), { oid, size }, how);
  if (!facts) return extracted(oid, file, how);
  if (lasts(facts) && facts[0].sha256) cache?.rememberBlob(oid, facts[0].sha256, facts);
  return facts;
}

async function extracted(oid: string, file: string, how: BlobReading): Promise<PictureFacts[]> {
  const { pool, cache, signal } = how;
  const content = await contentOf(oid, file, how, size => cache?.knowsSize(size) ?? false);
  if (content.lost) return [content.lost];
  const { pointer, sha256 } = content;
  // a content may have been read where it lay in the book's folder
  const name = pointer?.oid ?? sha256;
  const cached = name === undefined ? null : cache?.facts(name);
  const facts = cached ?? (await pool.facts(content.file, signal, sha256));
  // the store's own file stays
  rmSync(file, { force: true });
  if (pointer && facts[0].sha256 && facts[0].sha256 !== pointer.oid) return [damaged()];
  if (lasts(facts) && facts[0].sha256) cache?.rememberBlob(oid, facts[0].sha256, cached ? null : facts);
  return facts;
}
