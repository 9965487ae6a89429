import type { BookFolder } from '../../shared/first-settings';
import type { PictureFacts } from '../../shared/picture';
import type { FactsCache } from '../cache/cache';
import { discover } from '../discovery/discover';
import { recall } from '../gather';
import { placementsOf, resolvedLayouts } from '../layouts';
import { noSettings } from '../settings/settings';
import { layoutNames } from './layouts';

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
  const resolved = await resolvedLayouts(root, noSettings, { signal });
  const there = new Set(files.map(({ path }) => path));
  const placed = placementsOf(resolved).placements.map(({ picture }) => picture);
  const pages = await Promise.all(
    files.map(async found => ({ path: found.path, facts: (await recall([found], cache))?.[0] ?? [] })),
  );
  const stored = (encoding: PictureFacts['encoding']) =>
    pages.filter(({ facts }) => facts.some(page => page.encoding === encoding)).map(({ path }) => path);
  return {
    pictures: files.map(({ path }) => path),
    placed: [...new Set(placed)].filter(path => there.has(path)),
    layouts: await layoutNames(root, resolved, path => there.has(path), signal),
    known: { line: stored('bilevel'), colour: stored('colour'), toned: stored('rgb-toned') },
  };
}
