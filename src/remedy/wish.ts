// no-unit-test: test/remedy/candidates/candidate.test.ts converts by it, test/remedy/picture.test.ts reads the record
import type { Remedied, RemedyWish } from '../shared/remedy';

/** What is asked where nothing but the encoding and the way from colour to grey was chosen. */
export const plainWish = ({ to, grey }: Pick<RemedyWish, 'to' | 'grey'>): RemedyWish => ({
  to,
  grey,
  below: null,
  tone: { kind: 'own' },
  curve: null,
  blackPoint: 'scaled',
  bits: null,
  format: null,
  quality: null,
  upright: false,
  greyProfile: null,
});

/** What the record of a result says of its tint. */
export const tintOf = ({ to, tone }: RemedyWish): Pick<Remedied, 'toned' | 'counter'> => {
  if (to !== 'rgb-toned') return { toned: false };
  return tone.kind === 'stated' && tone.counter ? { toned: true, counter: true } : { toned: true };
};
