// no-unit-test: values alone; test/remedy/candidates/candidate.test.ts converts by it
import type { RemedyWish } from '../shared/remedy';

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
