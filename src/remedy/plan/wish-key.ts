import { createHash } from 'node:crypto';
import type { RemedyWish } from '../../shared/remedy';

const DIGITS = 16;

/** Short name of a wish: two wishes that ask for the same have the same. */
export function wishKey(wish: RemedyWish): string {
  const profile = wish.greyProfile && createHash('sha256').update(wish.greyProfile).digest('hex');
  const plain = Object.entries({ ...wish, greyProfile: profile }).sort(([x], [y]) => (x < y ? -1 : 1));
  return createHash('sha256').update(JSON.stringify(plain)).digest('hex').slice(0, DIGITS);
}
