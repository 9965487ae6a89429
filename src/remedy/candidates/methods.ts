import type { MethodPictures } from '../../shared/remedies';
import type { GreyMethod } from '../../shared/remedy';
import { encode } from '../encode';
import { greyPlane } from '../grey';
import { onPaper } from '../grey/flatten';
import { readPicture } from '../source';
import { plainWish } from '../wish';
import { shownSamples } from './shown';
import { shrunk } from './shrunk';
import { headerOf, samplesOf } from './stored';

/**
 * A picture as it is and made grey by each of the methods, with a longest edge of `longEdge` pixels, to be looked at
 * together. What is transparent is shown on white. Nothing is written.
 * @throws RemedyError in plain sentences where the picture cannot be converted
 */
export async function methodPictures(
  file: string,
  methods: readonly { id: string; method: GreyMethod }[],
  longEdge: number,
): Promise<MethodPictures> {
  const { header, samples, reading } = await readPicture(file);
  const small = shrunk(onPaper(samples), longEdge);
  const { png, width, height } = await shownSamples(small, { ...header, alpha: false }, longEdge);
  const grey: MethodPictures['grey'] = [];
  for (const { id, method } of methods) {
    const wish = { ...plainWish({ to: 'rgb-neutral', grey: method }), bits: 8 as const };
    const stored = await encode(greyPlane(small, reading.meaning, method), wish, 8);
    const shown = await shownSamples(samplesOf(stored), headerOf(stored, 'tiff', header), longEdge);
    grey.push({ id, png: shown.png });
  }
  return { width, height, asItIs: png, grey };
}
