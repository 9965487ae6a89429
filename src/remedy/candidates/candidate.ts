import { factsOf } from '../../picture/facts';
import { readingOf } from '../../picture/meaning';
import type { Candidate } from '../../shared/remedies';
import type { RemedyWish } from '../../shared/remedy';
import { made } from '../picture';
import { differenceOf } from '../proof';
import { tintOf } from '../wish';
import { shownSamples } from './shown';
import { headerOf, samplesOf } from './stored';

/**
 * What a conversion would make of a picture: the whole conversion but for the file, judged in full size and shown with
 * a longest edge of `longEdge` pixels. Nothing is written.
 * @throws RemedyError in plain sentences where the picture cannot be converted
 */
export async function candidateOf(file: string, wish: RemedyWish, longEdge: number): Promise<Candidate> {
  const { plane, stored, format, from, told, moved, header: source } = await made(file, wish, null);
  const samples = samplesOf(stored);
  const header = headerOf(stored, format, {
    orientation: wish.upright ? 1 : source.orientation,
    ppi: source.ppi,
    remedied: { from, to: wish.to, ...tintOf(wish), fitted: wish.curve !== null },
  });
  const reading = await readingOf(header);
  return {
    raster: await shownSamples(samples, header, longEdge),
    facts: { ...factsOf(samples, header, reading), page: 1, sha256: '' },
    ...differenceOf(plane, samples, reading.meaning),
    moved,
    told,
  };
}
