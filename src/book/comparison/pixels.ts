import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import type { Blobs } from '../git/blobs';
import { withContents } from '../git/handed';
import type { Repository } from '../git/repository';
import { inLanes } from '../lanes';
import type { Pool } from '../pool';
import type { PageOf } from '../revisions/page-changes';

export interface PixelReading {
  repository: Repository;
  blobs: Blobs;
  pool: Pick<Pool, 'pixels'>;
  cache: FactsCache | null;
  /** Bytes of the contents, by what git calls them. */
  sizes: ReadonlyMap<string, number>;
  signal?: AbortSignal;
}

/** Whether pages of a changed picture are pixel for pixel what they were, by page; those of which nobody looked are left out. */
export type PixelsAlike = ReadonlyMap<PageOf, ReadonlyMap<number, boolean>>;

const READING = 4;

/** A content whose pixels are wanted. */
interface Wanted {
  oid: string;
  /** By a name that it has in the book. */
  path: string;
  sha256: string;
}

/**
 * Whether changed pictures that have the same figures are the same pixel for pixel, which figures do not tell: only those
 * are looked at once more. @param read facts, by what git calls the content
 */
export async function pixelsAlike(
  pages: readonly PageOf[],
  read: ReadonlyMap<string, readonly PictureFacts[]>,
  how: PixelReading,
): Promise<PixelsAlike> {
  const pairs = pages.flatMap(page => {
    const { path, from, before, after } = page;
    if (!before || !after || before.oid === after.oid) return [];
    const [was, is] = [before, after].map(({ oid }) => read.get(oid) ?? []);
    const numbers = is.filter((facts, i) => was[i] && sameFigures(was[i], facts)).map(({ page }) => page);
    if (!numbers.length) return [];
    const sides = [
      { oid: before.oid, path: from ?? path, sha256: was[0].sha256 },
      { oid: after.oid, path, sha256: is[0].sha256 },
    ];
    return [{ page, numbers, sides }];
  });
  const wanted = new Map(pairs.flatMap(({ sides }) => sides.map(side => [side.oid, side] as const)));
  const digests = await digestsOf([...wanted.values()], how);
  return new Map(
    pairs.flatMap(({ page, numbers, sides }) => {
      const [was, is] = sides.map(({ oid }) => digests.get(oid));
      if (!was || !is) return [];
      const known = numbers.filter(number => was[number - 1] && is[number - 1]);
      return [[page, new Map(known.map(number => [number, was[number - 1] === is[number - 1]]))] as const];
    }),
  );
}

/** Where the figures are the same to the last digit, as those of a mirrored picture are. */
export function sameFigures(was: PictureFacts, is: PictureFacts): boolean {
  if (was.unreadable || is.unreadable) return false;
  const figures = ({ width, height, channels, bits, alpha, space, levels, zones }: PictureFacts) =>
    JSON.stringify([width, height, channels, bits, alpha, space, levels, zones]);
  return was.page === is.page && figures(was) === figures(is);
}

/** By what git calls the content; what cannot be read is left out. */
async function digestsOf(
  contents: readonly Wanted[],
  { repository, blobs, pool, cache, sizes, signal }: PixelReading,
): Promise<Map<string, (string | null)[]>> {
  const digests = new Map<string, (string | null)[]>();
  const unknown = contents.filter(({ oid, sha256 }) => {
    const known = cache?.pixels(sha256);
    if (known) digests.set(oid, known);
    return !known;
  });
  if (!unknown.length) return digests;
  const sized = unknown.map(content => ({ ...content, size: sizes.get(content.oid)! }));
  await withContents(sized, { repository, blobs, signal }, hand =>
    inLanes(sized, READING, async content => {
      const found = await hand(content, async had => (had.lost ? null : pool.pixels(had, signal)));
      if (!found) return;
      digests.set(content.oid, found);
      cache?.rememberPixels(content.sha256, found);
    }),
  );
  return digests;
}
