// no-unit-test: test/book/check.test.ts judges a book through it, test/book/revisions parts of one
import { judge } from '../rules';
import type { Finding, PictureReport } from '../shared/finding';
import type { PictureFacts } from '../shared/picture';
import { forecastAll } from './forecasts';
import { bookPictures, standings } from './pictures';
import { markReplaced } from './replaced';
import type { Settings } from './settings/settings';

/** A file that was read: its path in the book and what every page of it holds. */
export interface ReadFile {
  path: string;
  facts: readonly PictureFacts[];
}

export interface JudgedBook {
  pictures: PictureReport[];
  /** About the book as a whole. */
  findings: Finding[];
}

/**
 * Forecasts and judges what was read of a book, sorted by path. `partial`: the book has more pictures, so nothing is said
 * that depends on them. Gives way to other work; rejects with the signal's reason when cancelled.
 */
export async function judgeBook(
  files: readonly ReadFile[],
  settings: Settings,
  { partial = false, signal }: { partial?: boolean; signal?: AbortSignal } = {},
): Promise<JudgedBook> {
  const standing = standings(settings);
  const pictures = files.flatMap(({ path, facts }) => bookPictures(path, facts, standing(path)));
  markReplaced(pictures);
  await forecastAll(pictures, signal);
  const { targets, rules } = settings;
  const findings = judge({ pictures, targets, ruleSettings: rules, partial });
  return {
    pictures: pictures.map((picture, at) => ({ ...picture, findings: findings.pictures[at] })),
    findings: findings.book,
  };
}
