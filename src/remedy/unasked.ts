// no-unit-test: test/remedy/plan/index.test.ts and test/editor/checker/convertible.test.ts go by it
import type { BookPicture } from '../shared/finding';
import { isStronglyToned } from './strong-tone';

/** What of a picture goes when it becomes grey: its colour, its tone, or the one bit that keeps its edges sharp. */
export type Loss = 'colour' | 'tone' | 'line';

/** What of a picture goes when it becomes grey, though nobody said that it may; null: nothing. */
export function losesUnasked({
  facts,
  intent,
  intentStated,
}: Pick<BookPicture, 'facts' | 'intent' | 'intentStated'>): Loss | null {
  if (intentStated && intent === 'grey') return null;
  if (intentStated && intent !== 'line') return intent === 'toned' ? 'tone' : 'colour';
  if (facts.encoding === 'bilevel') return 'line';
  if (intentStated) return null;
  if (facts.encoding === 'colour') return 'colour';
  return isStronglyToned(facts) ? 'tone' : null;
}
