// no-unit-test: test/book/revisions/compare.test.ts compares books through it
import { judge } from '../../rules';
import type { BookPicture, Finding, PictureReport } from '../../shared/finding';
import type { PictureFacts } from '../../shared/picture';
import { compare } from '../discovery/discover';
import { forecastAll } from '../forecasts';
import { type Overrides, override } from '../overrides';
import { bookPictures, standings } from '../pictures';
import { markReplaced } from '../replaced';
import { loadSettings } from '../settings/load';
import type { Problem } from '../settings/problem';
import type { Settings } from '../settings/settings';
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
  snapshot: Snapshot;
  isPage: IsPage;
  /** Its pictures, by path: regular files only. */
  pages: ReadonlyMap<string, Entry>;
}

/**
 * Finds the settings and the pictures of a snapshot; `conditions` go before the settings' own.
 * @throws RevisionSettingsError
 */
export async function sideOf(
  root: string,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
  conditions: Overrides,
): Promise<Side> {
  const { settings, problems } = await loadSettings(root, { source: filesOf(root, snapshot, blobs) });
  if (!settings) throw new RevisionSettingsError(problems);
  return withSettings({ ...settings, targets: override(settings.targets, conditions) }, snapshot, blobs);
}

export async function withSettings(
  settings: Settings,
  snapshot: Snapshot,
  blobs: Pick<Blobs, 'small'>,
): Promise<Side> {
  const isPage = await pagesOf(snapshot, settings, blobs);
  const pages = [...snapshot].filter(([path, entry]) => isFile(entry) && isPage(path));
  return { settings, snapshot, isPage, pages: new Map(pages.sort(([x], [y]) => compare(x, y))) };
}

/** What is said of the pictures of a side that were looked at. */
export interface Judged {
  pictures: PictureReport[];
  findings: Finding[];
}

/**
 * Forecasts and judges the pictures of a side whose facts are known, by path. `partial`: there are more, so nothing is
 * said that depends on them.
 */
export async function judgeSide(
  { settings, pages }: Pick<Side, 'settings' | 'pages'>,
  factsOf: (path: string) => PictureFacts[] | null,
  partial: boolean,
  signal?: AbortSignal,
): Promise<Judged> {
  const standing = standings(settings);
  const pictures: BookPicture[] = [...pages.keys()].flatMap(path => {
    const facts = factsOf(path);
    return facts ? bookPictures(path, facts, standing(path)) : [];
  });
  markReplaced(pictures);
  await forecastAll(pictures, signal);
  const { targets, rules } = settings;
  const findings = judge({ pictures, targets, ruleSettings: rules, partial });
  return {
    pictures: pictures.map((picture, at) => ({ ...picture, findings: findings.pictures[at] })),
    findings: findings.book,
  };
}
