import type { PictureFacts, Unreadable } from '../shared/picture';

/** Reasons that lie in the content; others may be gone the next time. */
const LASTING: Unreadable['reason'][] = [
  'empty',
  'truncated',
  'corrupt',
  'too-large',
  'format',
  // what was read is the pointer: the picture, once it is fetched, is another content
  'not-fetched',
];

/** Whether something was read, so that what is said is said of the content and not of the file it was to lie in. */
export const wasOpened = ([{ sha256, unreadable }]: readonly PictureFacts[]): boolean =>
  sha256 !== '' || unreadable?.reason === 'crashed' || unreadable?.reason === 'timeout';

/** Whether what was read stays true as long as the content does. */
export const lasts = (facts: readonly PictureFacts[]): boolean =>
  facts.every(page => !page.unreadable || LASTING.includes(page.unreadable.reason));
