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

/** Whether what was read stays true as long as the content does. */
export const lasts = (facts: readonly PictureFacts[]): boolean =>
  facts.every(page => !page.unreadable || LASTING.includes(page.unreadable.reason));
