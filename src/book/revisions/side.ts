// no-unit-test: test/book/revisions/compare.test.ts compares books through it
import type { PictureFacts } from '../../shared/picture';
import { compare } from '../discovery/discover';
import { type JudgedBook, judgeBook } from '../judge-book';
import { loadSettings } from '../settings/load';
import type { Problem } from '../settings/problem';
import type { Settings } from '../settings/settings';
import { readWaivers } from '../waivers/file';
import type { Waiver } from '../waivers/key';
import type { Blobs } from './blobs';
import { type IsPage, pagesOf } from './pages';
import { type Entry, isFile, type Snapshot } from './snapshot';
import { filesOf } from './source';

/** The settings of a revision cannot be used. */
export class RevisionSettingsError extends Error {
  override name = 'RevisionSettingsError';
  constructor(readonly problems: readonly Problem[]) {
    super('The settings have problems.');
  }
}

/** A book as a revision, or the index, holds it. */
export interface Side {
  settings: Settings;
  waivers: readonly Waiver[];
  snapshot: Snapshot;
  isPage: IsPage;
  /** Its pictures, by path: regular files only. */
  pages: ReadonlyMap<string, Entry>;
}

/**
 * Finds the settings and the pictures of a snapshot; `adjust` makes of its settings what was asked for on the spot.
 * @throws RevisionSettingsError
 */
export async function sideOf(
  root: string,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  adjust: (settings: Settings) => Settings,
): Promise<Side> {
  const { settings, problems } = await loadSettings(root, { source: filesOf(root, snapshot, blobs) });
  if (!settings) throw new RevisionSettingsError(problems);
  return withSettings(root, adjust(settings), snapshot, blobs);
}

/** The same by other settings. @throws RevisionSettingsError where its waivers cannot be read */
export async function withSettings(
  root: string,
  settings: Settings,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
): Promise<Side> {
  const { waivers, problems } = await readWaivers(root, { source: filesOf(root, snapshot, blobs) });
  if (problems.length) throw new RevisionSettingsError(problems);
  const isPage = await pagesOf(snapshot, settings, blobs);
  const pages = [...snapshot].filter(([path, entry]) => isFile(entry) && isPage(path));
  return { settings, waivers, snapshot, isPage, pages: new Map(pages.sort(([x], [y]) => compare(x, y))) };
}

/**
 * Judges the pictures of a side whose facts are known, by path. `partial`: there are more, so nothing is said that
 * depends on them.
 */
export function judgeSide(
  { settings, pages }: Pick<Side, 'settings' | 'pages'>,
  factsOf: (path: string) => PictureFacts[] | null,
  partial: boolean,
  signal?: AbortSignal,
): Promise<JudgedBook> {
  const files = [...pages.keys()].flatMap(path => {
    const facts = factsOf(path);
    return facts ? [{ path, facts }] : [];
  });
  return judgeBook(files, settings, { partial, signal });
}
