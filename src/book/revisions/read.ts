import { rmSync } from 'node:fs';
import path from 'node:path';
import { LONGEST_POINTER } from '../../picture/header/pointer';
import { HELD } from '../../picture/open';
import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { contentOf, damaged, hashOfContent, type Stores } from '../git/content';
import { NotInCloneError } from '../git/git';
import { factsInFolder, mayHold } from '../git/in-folder';
import type { Repository } from '../git/repository';
import { sizesOf } from '../git/sizes';
import { type Sized, Stretches, unpackInto } from '../git/stretches';
import { inTemporaryFolder } from '../git/temporary';
import { inLanes } from '../lanes';
import { lasts, wasOpened } from '../lasting';
import type { Pool } from '../pool';

export interface BlobReading extends Stores {
  repository: Repository;
  pool: Pick<Pool, 'factsOf'>;
  cache: FactsCache | null;
  /** Bytes of the contents, by what git calls them; left out: git is asked. */
  sizes?: ReadonlyMap<string, number>;
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
  const ways = waysTo(
    unknown.map(content => ({ ...content, size: sizes.get(content.oid)! })),
    how,
  );
  await inTemporaryFolder(async folder => {
    const stretches = new Stretches(how.repository, ways['in-stretch'], { folder, signal: how.signal });
    try {
      // git unpacks while those are read that it need not unpack
      const inTurn = WAYS.flatMap(way => ways[way].map(content => ({ content, way })));
      await inLanes(inTurn, READING, async ({ content, way }) => {
        how.signal?.throwIfAborted();
        const { oid } = content;
        const read = await named(
          await readBy(way, content, { ...how, folder, stretches }),
          content,
          folder,
          how,
        );
        facts.set(oid, read);
        how.onRead?.(oid, read);
        how.onProgress?.(facts.size, wanted.size);
      });
    } finally {
      await stretches.close();
    }
  });
  return facts;
}

/** Ways to come by a content, in the order in which they are gone. */
const WAYS = ['in-folder', 'in-stretch', 'by-itself', 'looked-at'] as const;
type Way = (typeof WAYS)[number];

function waysTo(contents: readonly Sized[], { repository, cache }: BlobReading): Record<Way, Sized[]> {
  const ways: Record<Way, Sized[]> = {
    'in-folder': [],
    'in-stretch': [],
    'by-itself': [],
    'looked-at': [],
  };
  for (const content of contents) {
    const { size } = content;
    // what may be a pointer, and what may have been read under another name, is looked at before it is read
    const isDoubtful = size < LONGEST_POINTER || cache?.knowsSize(size);
    if (isDoubtful) ways['looked-at'].push(content);
    else if (mayHold(path.join(repository.root, content.path), size)) ways['in-folder'].push(content);
    else ways[size <= HELD ? 'in-stretch' : 'by-itself'].push(content);
  }
  return ways;
}

interface At extends BlobReading {
  /** A temporary one. */
  folder: string;
  stretches: Stretches;
}

async function readBy(way: Way, content: Sized, how: At): Promise<PictureFacts[]> {
  const { cache, pool, repository, signal, stretches } = how;
  const { oid } = content;
  const file = path.join(how.folder, oid);
  if (way === 'looked-at') return extracted(content, file, how);
  const called = path.join(repository.root, content.path);
  const byItself = async () => {
    await unpackInto(repository, content, file, signal);
    return pool.factsOf({ file, called }, signal).finally(() => rmSync(file, { force: true }));
  };
  const read = {
    'in-folder': () => factsInFolder(called, content, how),
    'in-stretch': () => stretches.take(oid, where => pool.factsOf({ ...where, called }, signal)),
    'by-itself': byItself,
  }[way];
  let facts = await read();
  // the file in the folder, or what was unpacked, is not there any more, or is something else
  if (!facts || !wasOpened(facts)) facts = (await byItself())!;
  if (lasts(facts) && facts[0].sha256) cache?.rememberBlob(oid, facts[0].sha256, facts);
  return facts;
}

/** A content that was given up at its first byte has a hash all the same, as it has where a folder is checked. */
async function named(
  facts: PictureFacts[],
  content: Sized,
  folder: string,
  how: BlobReading,
): Promise<PictureFacts[]> {
  if (!lasts(facts) || facts[0].sha256) return facts;
  const sha256 = await hashOfContent(content, path.join(folder, `${content.oid}.hashed`), how);
  return facts.map(page => ({ ...page, sha256 }));
}

async function extracted(sized: Sized, file: string, how: BlobReading): Promise<PictureFacts[]> {
  const { pool, cache, repository, signal } = how;
  const { oid, size, path: called } = sized;
  const content = await contentOf(sized, file, how, { hashed: cache?.knowsSize(size) });
  if (content.lost) return [content.lost];
  const { pointer, sha256 } = content;
  // a content may have been read where it lay in the book's folder
  const name = pointer?.oid ?? sha256;
  const cached = name === undefined ? null : cache?.facts(name);
  const wanted = { file: content.file, sha256, called: path.join(repository.root, called) };
  // no certain content is wanted, so there is no other
  const facts = cached ?? (await pool.factsOf(wanted, signal))!;
  // the store's own file stays
  rmSync(file, { force: true });
  if (pointer && facts[0].sha256 && facts[0].sha256 !== pointer.oid) return [damaged()];
  if (lasts(facts) && facts[0].sha256) cache?.rememberBlob(oid, facts[0].sha256, cached ? null : facts);
  return facts;
}
