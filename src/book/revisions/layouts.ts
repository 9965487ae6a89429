// no-unit-test: test/book/comparison/compare.test.ts compares books with layouts
import { isOwnPage, kindOf } from '../../layout';
import { discover } from '../discovery/discover';
import type { Blobs } from '../git/blobs';
import { ENOUGH } from '../head';
import { type BookLayouts, placementsOf, resolvedIn } from '../layouts';
import { fileText } from '../layouts/encoding';
import { isLayout, type LayoutFile, type LayoutFiles, MOST_BYTES, mayBeAround } from '../layouts/sources';
import type { Settings } from '../settings/settings';
import type { GitTree } from './git-tree';

/** What the layouts of a revision, or of the index, place: as `layouts` says it of a folder. */
export async function layoutsIn(
  root: string,
  settings: Settings,
  tree: GitTree,
  blobs: Pick<Blobs, 'small' | 'head'>,
): Promise<BookLayouts> {
  const [isNamed, isAround] = [isLayout(settings), mayBeAround(settings)];
  const wanted = (path: string) => isNamed(path) || isAround(path);
  const found =
    settings.layouts?.length === 0
      ? []
      : (await discover({ root, paths: [root], settings, wanted, tree })).files;
  const files: LayoutFile[] = [];
  const notRead: LayoutFiles['notRead'] = [];
  for (const { path, file, obstacle } of found) {
    const around = isAround(path) && ({ around: true } as const);
    const entry = await tree.contentAt(path);
    const bytes = entry && (await blobs.small(entry.oid, MOST_BYTES, path));
    if (entry && kindOf(path) === 'html') {
      const head = bytes ?? (await blobs.head(entry.oid, ENOUGH, path));
      if (isOwnPage(head.toString('utf8', 0, ENOUGH))) continue;
    }
    if (bytes) files.push({ ...{ path, file, kind: kindOf(path)!, bytes, ...fileText(bytes) }, ...around });
    else {
      const why = obstacle?.text ?? `It is larger than ${MOST_BYTES / 1024 / 1024} MB.`;
      notRead.push({ path, why, ...around });
    }
  }
  return placementsOf(await resolvedIn({ files, notRead }, asked => tree.existing(asked), settings));
}
