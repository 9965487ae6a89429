// no-unit-test: test/remedy/batch.test.ts converts books through it
import type { Conversion } from '../shared/conversion';
import type { Remedied, RemedyWish } from '../shared/remedy';
import type { Undertaking } from './carry-out';
import type { Converters } from './converters';
import { isCoarse, lostInJpeg } from './encode';
import { failed, skipped } from './outcomes';
import { besides, type Existing } from './plan/existing';
import type { Decision } from './plan/types';
import { type FewBits, planned } from './rehearsed';
import type { Results } from './results';
import type { Selecting } from './select';

export interface Converting extends Selecting {
  wish: RemedyWish;
  converters: Converters;
  /** How many pictures at a time. */
  jobs?: number;
  /** The user's cache folder: what was written is remembered there. */
  memory: string;
  dryRun: boolean;
  /** Has the layouts of the book place the results, where these lie in its folder and have a name of their own. */
  relink: boolean;
}

/** Fills in the conversions that are none, or are only planned, and gives those that are to be undertaken. */
export async function settled(
  decisions: readonly Decision[],
  how: Converting,
  results: Results,
  conversions: Conversion[],
): Promise<{ at: number; of: Undertaking }[]> {
  const undertakings: { at: number; of: Undertaking }[] = [];
  const { greyProfile } = how.wish;
  const few: FewBits | null = how.dryRun
    ? { coarse: await isCoarse(greyProfile), inJpeg: await lostInJpeg(greyProfile) }
    : null;
  for (const [at, decision] of decisions.entries()) {
    const one = await settle(decision, how, results);
    if ('path' in one) conversions[at] = one;
    else if (few) conversions[at] = await planned(one, how.wish, few);
    else undertakings.push({ at, of: one });
  }
  return undertakings;
}

/** A conversion that is none, or what is to be undertaken. */
async function settle(
  decision: Decision,
  { wish, place, pool, signal }: Converting,
  results: Results,
): Promise<Conversion | Undertaking> {
  const { asked } = decision;
  if (decision.do === 'skip') return skipped(asked, wish, decision.reason);
  if (decision.do === 'refuse') return failed(asked, wish, decision.reason);
  const { order } = decision;
  if (place.kind === 'in-place') return { asked, order, replaces: null };
  const existing = await results.at(order.output);
  const isCopied = existing.kind === 'file' && existing.sha256 === asked.pages[0].sha256;
  if (decision.do === 'copy' && isCopied)
    return { ...skipped(asked, wish, 'It was copied before.'), output: order.shown };
  const record = await recordOf(order.output, existing, pool, signal);
  const verdict = besides(asked, order, 'wish' in order ? order.wish : wish, place, existing, record);
  switch (verdict.do) {
    case 'skip':
      return { ...skipped(asked, wish, verdict.reason), output: order.shown };
    case 'refuse':
      return failed(asked, wish, verdict.reason);
    case 'write':
      return { asked, order, replaces: null };
    case 'replace':
      return {
        asked,
        order: { ...order, told: [verdict.told, ...order.told] },
        replaces: verdict.sha256,
      };
  }
}

/** What an existing file says of itself, where this program remembers nothing of it. */
async function recordOf(
  file: string,
  existing: Existing,
  pool: Converting['pool'],
  signal: AbortSignal | undefined,
): Promise<Remedied | null> {
  if (existing.kind !== 'file' || existing.made) return null;
  const [facts] = await pool.facts(file, signal, existing.sha256);
  return facts.remedied;
}
