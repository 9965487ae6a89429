import { fileRange } from '../print/file-range';
import type { PictureFacts } from '../shared/picture';

/** Range of L* below which it is one tone rather than a picture: blank pages, tints, plates. Own choice. */
const ONE_TONE = 5;

/** Whether a picture is practically one tone, few specks left out: it has no shading to lose and no contrast to gain. */
export function isOneTone(tone: NonNullable<PictureFacts['tone']>): boolean {
  const { from, to } = fileRange(tone.histogram);
  return to - from < ONE_TONE;
}
