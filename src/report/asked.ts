// no-unit-test: test/report/github/index.test.ts and test/report/sarif/index.test.ts read these words
import { count, list } from '../rules/words';
import type { Finding, PictureReport } from '../shared/finding';
import { asksOf } from './sheet/shared';
import { nameOf } from './text/blocks';

/** So many pictures are named after a finding about the book: what a service shows of it has an end. */
const NAMED = 20;

/** The pictures that a finding about the book asks to be changed; a note asks for nothing. */
export const askedBy = (finding: Finding, pictures: readonly PictureReport[]): PictureReport[] =>
  finding.severity === 'note' ? [] : pictures.filter(picture => asksOf(finding, picture));

/** ` This asks for 2 pictures: a.tif and b.tif.`: said where a finding stands apart from those that it is about. */
export function askedWords(asked: readonly PictureReport[]): string {
  const names = [...new Set(asked.map(({ path, facts }) => nameOf(path, facts.page)))];
  return names.length ? ` This asks for ${count(names.length, 'picture')}: ${list(names, NAMED)}.` : '';
}
