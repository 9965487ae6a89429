// no-unit-test: test/book/revisions/compare.test.ts compares books with layouts
import { kindOf } from '../../layout';
import { type BookLayouts, placementsOf, resolvedIn } from '../layouts';
import { fileText } from '../layouts/encoding';
import { isLayout, type LayoutFile, type LayoutFiles, MOST_BYTES, mayBeAround } from '../layouts/sources';
import type { Settings } from '../settings/settings';
import type { Blobs } from './blobs';
import { pagesOf } from './pages';
import type { Snapshot } from './snapshot';
import { filesIn } from './source';

/** What the layouts of a revision, or of the index, place: as `layouts` says it of a folder. */
export async function layoutsIn(
  root: string,
  snapshot: Snapshot,
  settings: Settings,
  blobs: Pick<Blobs, 'small'>,
): Promise<BookLayouts> {
  const [isNamed, isAround] = [isLayout(settings), mayBeAround(settings)];
  const isSource = await pagesOf(snapshot, settings, blobs, path => isNamed(path) || isAround(path));
  const files: LayoutFile[] = [];
  const notRead: LayoutFiles['notRead'] = [];
  const wanted = settings.layouts?.length === 0 ? () => false : isSource;
  for (const [path, entry] of await filesIn(snapshot, blobs, wanted)) {
    const bytes = await blobs.small(entry.oid, MOST_BYTES, path);
    const around = isAround(path) && ({ around: true } as const);
    if (bytes)
      files.push({
        ...{ path, file: `${root}/${path}`, kind: kindOf(path)!, bytes, ...fileText(bytes) },
        ...around,
      });
    else notRead.push({ path, why: `It is larger than ${MOST_BYTES / 1024 / 1024} MB.`, ...around });
  }
  files.sort((x, y) => (x.path < y.path ? -1 : 1));
  const there = new Map([...snapshot.keys()].map(path => [path.normalize('NFC'), path]));
  const existing = async () => (path: string) => there.get(path.normalize('NFC')) ?? null;
  return placementsOf(await resolvedIn({ files, notRead }, existing, settings));
}
