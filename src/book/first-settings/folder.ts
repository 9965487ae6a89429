import type { BookFolder } from '../../shared/first-settings';
import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { discover } from '../discovery/discover';
import { recall } from '../gather';
import { placementsOf, resolvedLayouts } from '../layouts';
import { noSettings } from '../settings/settings';

/**
 * What lies in a folder (absolute) that is to be a book. No picture is read: `cache` says what an earlier check knew of
 * those that have not changed since.
 */
export async function bookFolder(
  root: string,
  cache: FactsCache | null,
  signal?: AbortSignal,
): Promise<BookFolder> {
  const { files } = await discover({ root, paths: [root], settings: noSettings, signal });
  const { placements } = placementsOf(await resolvedLayouts(root, noSettings, { signal }));
  const there = new Set(files.map(({ path }) => path));
  const placing = placements.filter(({ picture }) => there.has(picture));
  const pages = await Promise.all(
    files.map(async found => ({ path: found.path, facts: (await recall([found], cache))?.[0] ?? [] })),
  );
  const stored = (encoding: PictureFacts['encoding']) =>
    pages.filter(({ facts }) => facts.some(page => page.encoding === encoding)).map(({ path }) => path);
  return {
    pictures: files.map(({ path }) => path),
    placed: inTurn(placing.map(({ picture }) => picture)),
    layouts: inTurn(placing.map(({ file }) => file)),
    known: { line: stored('bilevel'), colour: stored('colour'), toned: stored('rgb-toned') },
  };
}

/** Each once, in the order of the book: the settings that name layouts give it by their own. */
const inTurn = (paths: readonly string[]): string[] => [...new Set(paths)];
