// no-unit-test: test/remedy/batch.test.ts converts books through it
import type { Conversion } from '../shared/conversion';
import type { RemedyWish } from '../shared/remedy';
import type { Asked } from './plan/types';

/** A conversion of which nothing is written: what all of these say. */
export const unwritten = ({ path: at, pages: [facts] }: Asked, { to }: RemedyWish) => ({
  path: at,
  output: null,
  sha256: facts.sha256,
  from: facts.encoding,
  to,
  format: null,
  bits: null,
  proof: null,
  moved: null,
  told: [],
});

export const skipped = (asked: Asked, wish: RemedyWish, reason: string): Conversion => ({
  ...unwritten(asked, wish),
  outcome: 'skipped',
  reason,
});

export const failed = (asked: Asked, wish: RemedyWish, reason: string): Conversion => ({
  ...unwritten(asked, wish),
  outcome: 'failed',
  reason,
});
