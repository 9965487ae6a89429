// no-unit-test: test/remedy/plan/index.test.ts plans by it
import type { PictureFacts } from '../../shared/picture';
import type { RemedyWish } from '../../shared/remedy';
import { otherFormat } from './format';
import type { Asked } from './types';

/** Why a file cannot be converted at all, and what to do; null where it can. */
export function unusable(pages: readonly PictureFacts[]): string | null {
  const readable = pages.filter(page => !page.unreadable);
  if (readable.length > 1)
    return `It holds ${readable.length} pages, and a conversion makes one picture. Save each page as a file of its own.`;
  return pages[0].unreadable?.text ?? null;
}

/** Why a picture cannot be replaced by its result, and what to do; null where it can. */
export function irreplaceable(asked: Asked, wish: RemedyWish): string | null {
  if (asked.isProtected)
    return 'It is write-protected, so it was not replaced. Take the protection away, or have the result written beside it.';
  const other = otherFormat(asked, wish);
  return (
    other &&
    `${other} So it cannot be converted in place: have the result written beside it or into a folder.`
  );
}
