import { list } from '../rules/words';
import type { BookPicture } from '../shared/finding';
import type { FactsCache } from './cache/cache';
import { now, sameStamp } from './cache/stamp';
import type { Found } from './discovery/discover';
import { hashIfReadable, stamped } from './gather';
import type { ReadFile } from './judge-book';
import { inLanes } from './lanes';
import { originalName } from './original-names';

interface Looking {
  /** What was hashed is kept in it. */
  cache: FactsCache | null;
  signal?: AbortSignal;
}

const HASHING = 2;

/** So many pairs are named. */
const NAMED = 5;

/**
 * The files that were read, with the original of each converted copy that says of itself which content it was made of,
 * where the picture whose name it carries lies beside it and holds another content by now. It may be in no book, since
 * the copy is placed instead.
 * @param all every picture in the folder, of the book or not
 */
export function withChangedOriginals(
  read: readonly ReadFile[],
  all: readonly Found[],
  { cache, signal }: Looking,
): Promise<ReadFile[]> {
  const beside = new Map(all.map(found => [found.path, found]));
  const known = new Map(read.map(({ path, facts }) => [path, facts[0].sha256]));
  return inLanes(read, HASHING, async file => {
    const [{ remedied, unreadable }] = file.facts;
    const name = remedied && !unreadable ? originalName(file.path) : null;
    const original = name === null ? undefined : beside.get(name);
    if (!original || original.obstacle) return file;
    const content = known.get(original.path) || (await contentOf(original, { cache, signal }));
    return content === null || content === remedied!.from
      ? file
      : { ...file, changedOriginal: original.path };
  });
}

/** SHA-256 of a file, hex; null where it cannot be read, or changes meanwhile. */
async function contentOf({ path, file }: Found, { cache, signal }: Looking): Promise<string | null> {
  const readAt = now();
  const before = await stamped(file);
  if (!before) return null;
  const entry = cache?.lookUp(path, before);
  if (entry?.settled) return entry.sha256;
  const sha256 = await hashIfReadable(file, signal);
  const after = await stamped(file);
  if (!sha256 || !after || !sameStamp(before, after)) return null;
  cache?.remember(path, before, readAt, sha256, null);
  return sha256;
}

/** What a person should know of copies that show their originals as they were; nothing where there are none. */
export function outdatedNotices(pictures: readonly BookPicture[]): string[] {
  const pairs = pictures.flatMap(({ path, facts, changedOriginal }) =>
    changedOriginal && facts.page === 1 ? [{ path, changedOriginal }] : [],
  );
  if (!pairs.length) return [];
  const [{ path, changedOriginal }] = pairs;
  if (pairs.length === 1)
    return [
      `The book has an earlier state of ${changedOriginal}: ${path} was made of it, and it was changed since. Convert it again.`,
    ];
  const named = pairs.map(pair => `${pair.changedOriginal} by ${pair.path}`);
  return [
    `The book has earlier states of ${pairs.length} pictures, which were changed after they were converted: ${list(named, NAMED)}. Convert them again.`,
  ];
}
