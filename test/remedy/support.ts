// no-unit-test: part of the tests
import type { Asked } from '../../src/remedy/plan/types';
import type { PictureFacts } from '../../src/shared/picture';
import type { RemedyWish } from '../../src/shared/remedy';
import { greyFacts } from '../book/support/facts';

/** To `rgb-neutral`, everything else as it is by default. */
export const wishFor = (change: Partial<RemedyWish> = {}): RemedyWish => ({
  to: 'rgb-neutral',
  grey: { kind: 'lightness' },
  below: null,
  tone: { kind: 'own' },
  curve: null,
  blackPoint: 'scaled',
  bits: null,
  format: null,
  quality: null,
  upright: false,
  greyProfile: null,
  ...change,
});

/** A colour picture that was found at `path` in the book `/book`. Its hash is the path's, so that no two are alike. */
export function askedFor(
  path: string,
  change: Partial<Asked> = {},
  facts: Partial<PictureFacts> = {},
): Asked {
  const format = path.endsWith('.png') ? 'png' : path.endsWith('.jpg') ? 'jpeg' : 'tiff';
  return {
    path,
    file: `/book/${path}`,
    ...{ named: false, meant: false },
    link: null,
    pages: [greyFacts(Buffer.from(path).toString('hex'), { encoding: 'colour', format, ...facts })],
    luminance: false,
    remedied: null,
    ...{ intent: 'grey', intentStated: true },
    isProtected: false,
    ...{ otherNames: 0, namesMeant: 1 },
    replacedBy: null,
    ...change,
  };
}
