import { list } from '../../rules/words';
import type { Comparison, PageChange, PictureChange } from '../../shared/comparison';
import type { PictureReport } from '../../shared/finding';
import { blankAt } from '../blank-at';

/** A layout places it, and it is not there: nothing of it can be printed. */
export const isMissing = (picture: PictureReport | null): boolean =>
  picture !== null && blankAt(picture) !== null;

/** It is there, and what it holds is no picture that can be read. */
export const isBroken = (picture: PictureReport | null): boolean => {
  const reason = picture?.facts.unreadable?.reason;
  return reason !== undefined && reason !== 'not-fetched' && !isMissing(picture);
};

/** Whether a page that could be read before, or is new, cannot be read now. */
export const breaks = ({ pages }: Pick<PictureChange, 'pages'>): boolean =>
  pages.some(({ before, after }) => isBroken(after) && !isBroken(before));

/** Whether a place in the book stays blank after the change. */
export const leavesBlank = ({ pages }: Pick<PictureChange, 'pages'>): boolean =>
  pages.some(({ after }) => isMissing(after));

/** Whether it was there before: then it went, or is called otherwise now, and the layout still names it. */
export const wasThere = ({ pages }: { pages: readonly Pick<PageChange, 'before'>[] }): boolean =>
  pages.some(({ before }) => before !== null && !isMissing(before));

/** So many pictures are named. */
const NAMED = 5;

/** What a layout places in vain, in a sentence; nothing where it places none. */
export function blankPlaces({ changes }: Pick<Comparison, 'changes'>): string {
  const blank = changes.filter(leavesBlank).map(({ path }) => path);
  if (!blank.length) return '';
  const names = list(blank, NAMED);
  return blank.length === 1
    ? `${names} is placed by a layout and not there, so its place stays blank: put it back, or have the layout place what took its place.`
    : `${names} are placed by a layout and not there, so their places stay blank: put them back, or have the layout place what took their place.`;
}
