import fs from 'node:fs/promises';
import { UnreadableError } from '../picture/header/unreadable';
import { unreadableFacts } from '../picture/unreadable-facts';
import type { PictureFacts, Unreadable } from '../shared/picture';
import type { FactsCache } from './cache/cache';
import { now, type Stamp, sameStamp, stampOf } from './cache/stamp';
import type { Found } from './discovery/discover';
import { look } from './discovery/look';
import { hashOf } from './hash';
import { inLanes } from './lanes';
import { lasts } from './lasting';
import type { Pool } from './pool';

export interface Gathering {
  /** The book's root: a file that became a link out of it meanwhile is not read. */
  realRoot: string;
  pool: Pick<Pool, 'facts'>;
  cache: FactsCache | null;
  signal?: AbortSignal;
  onProgress?: (done: number, total: number, path: string) => void;
}

const LOOKING = 32;
/** More than there are readers, so that none of them waits for a hash. */
const READING = 6;

/** Facts of every page of every file, in the files' order: from the cache where nothing changed, else freshly read. */
export async function gather(files: readonly Found[], how: Gathering): Promise<PictureFacts[][]> {
  let done = 0;
  const finished = (found: Found) => how.onProgress?.(++done, files.length, found.path);
  const known = await inLanes(files, LOOKING, async found => {
    how.signal?.throwIfAborted();
    const facts = await recalled(found, how.cache);
    if (facts) finished(found);
    return facts;
  });
  const unknown = files.filter((_, at) => known[at] === null);
  const read = await inLanes(unknown, READING, async found => {
    how.signal?.throwIfAborted();
    const facts = await freshly(found, how);
    finished(found);
    return facts;
  });
  let next = 0;
  return known.map(facts => facts ?? read[next++]);
}

/**
 * Facts of every page of every file without reading any, in the files' order. Null where one of them is not known: what
 * is said of a set must not hang on which of its pictures happen to be known.
 */
export async function recall(
  files: readonly Found[],
  cache: FactsCache | null,
): Promise<PictureFacts[][] | null> {
  const known = await inLanes(files, LOOKING, found => recalled(found, cache));
  return known.every(facts => facts !== null) ? known : null;
}

const recalled = async (found: Found, cache: FactsCache | null): Promise<PictureFacts[] | null> =>
  found.obstacle ? [obstructed(found.obstacle)] : remembered(found, cache);

/** The cache's answer, where size and times prove that the file is what it was. */
async function remembered(found: Found, cache: FactsCache | null): Promise<PictureFacts[] | null> {
  const stamp = cache && (await stamped(found.file));
  const entry = stamp && cache.lookUp(found.path, stamp);
  return entry?.settled ? cache!.facts(entry.sha256) : null;
}

/** Hashes where that may spare a reading, else reads; once more where the file was changed under the reader's hands. */
async function freshly(found: Found, how: Gathering, again = true): Promise<PictureFacts[]> {
  const { cache, pool, signal } = how;
  const readAt = now();
  const before = await stamped(found.file);
  if (!before) return [obstructed(await whyNot(found, how.realRoot))];
  const sha256 = cache?.knowsSize(before.size) ? await hashIfReadable(found.file, signal) : undefined;
  const cached = sha256 ? cache!.facts(sha256) : null;
  const facts = cached ?? (await hashed(found.file, await pool.facts(found.file, signal, sha256), signal));
  const after = await stamped(found.file);
  if (!after || !sameStamp(before, after)) return again ? freshly(found, how, false) : facts;
  if (lasts(facts)) cache?.remember(found.path, before, readAt, facts[0].sha256, cached ? null : facts);
  return facts;
}

/** A file that was given up at its first byte still has a hash: it must not depend on what the cache knew before. */
async function hashed(file: string, facts: PictureFacts[], signal?: AbortSignal): Promise<PictureFacts[]> {
  if (!lasts(facts) || facts[0].sha256) return facts;
  const sha256 = (await hashIfReadable(file, signal)) ?? '';
  return facts.map(page => ({ ...page, sha256 }));
}

/** Null where there is no regular file any more. */
export async function stamped(file: string): Promise<Stamp | null> {
  const stat = await fs.stat(file, { bigint: true }).catch(() => null);
  return stat?.isFile() ? stampOf(stat) : null;
}

async function whyNot({ file }: Found, realRoot: string): Promise<Unreadable> {
  const seen = await look(file, realRoot);
  if (seen.kind === 'obstacle') return seen.why;
  return { reason: 'missing', text: 'The file was taken away while the book was read. Check again.' };
}

/** What is known of a file that must not be opened. */
export const obstructed = ({ reason, text }: Unreadable): PictureFacts =>
  unreadableFacts(new UnreadableError(reason, text), '');

/** SHA-256 of a file, hex; undefined where it cannot be read: the reader will say why. @throws the signal's reason */
export async function hashIfReadable(file: string, signal?: AbortSignal): Promise<string | undefined> {
  try {
    return await hashOf(file, signal);
  } catch {
    signal?.throwIfAborted();
    return undefined;
  }
}
