import type { PictureFacts } from '../shared/picture';
import { sharp } from './decode-sharp';
import { heldPicture } from './open';
import { factsOfOpen } from './read';

/** A larger one takes longer and makes the next no quicker. */
const EDGE = 256;

/**
 * Reads a picture of noise that is on no disk, as grey as those of a book are: the first real one then finds the decoder
 * and the pass over its pixels set up. Yields what it was read as.
 */
export async function rehearse(): Promise<PictureFacts[]> {
  const bytes = await sharp({
    create: {
      ...{ width: EDGE, height: EDGE, channels: 3, background: '#808080' },
      noise: { type: 'gaussian', mean: 128, sigma: 40 },
    },
  })
    .grayscale()
    .toColourspace('srgb')
    .jpeg({ quality: 92 })
    .toBuffer();
  return factsOfOpen(heldPicture(bytes));
}
