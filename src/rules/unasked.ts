// no-unit-test: test/remedy/plan/index.test.ts and test/editor/checker/convertible.test.ts go by it
import type { BookPicture } from '../shared/finding';
import type { Encoding, PictureFacts } from '../shared/picture';

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

/**
 * Mean chroma (CIELAB) from which a tone was hardly left over: casts of conversions, scanners and papers stay below it
 * (own choice, no source).
 */
const STRONG = 8;

/** Whether a picture is toned so strongly that it may well be meant. */
export const isStronglyToned = ({ encoding, chroma }: Pick<PictureFacts, 'encoding' | 'chroma'>): boolean =>
  encoding === 'rgb-toned' && (chroma?.mean ?? 0) >= STRONG;

/** Greys that no tone can be taken from. */
export const TONELESS: ReadonlySet<Encoding> = new Set([
  'single-channel',
  'rgb-neutral',
  'black-only',
  'bilevel',
  'lab-neutral',
]);
