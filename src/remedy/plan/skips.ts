// no-unit-test: test/remedy/plan/index.test.ts plans by it
import { originalName } from '../../book/original-names';
import type { Encoding, PictureFacts } from '../../shared/picture';
import type { RemedyWish } from '../../shared/remedy';
import type { Asked } from './types';

/** Why nothing is to be done to a picture; null where there is. */
export function needsNothing(
  { named, intent, intentStated, remedied, pages: [facts] }: Asked,
  wish: RemedyWish,
): string | null {
  if (wish.curve !== null && remedied?.fitted) return FITTED_ALREADY;
  if (isRight(facts, wish)) return `It is ${wish.to} already.`;
  if (wish.to === 'rgb-toned' && wish.tone.kind !== 'stated' && TONELESS.has(facts.encoding))
    return TONELESS_WORDS;
  // a picture that was named is meant
  if (named) return null;
  if (!intentStated && facts.encoding === 'colour')
    return 'It is in colour, and nobody said that it is to be grey. Name the picture itself, or list it under "intent", "grey", in evengrey.json.';
  if (intent === 'line' && intentStated && facts.encoding === 'bilevel') return LINE_WORDS;
  if (intent === 'grey' || intent === 'line') return null;
  if (intent === 'toned' && wish.to === 'rgb-toned') return null;
  return `The settings say that it is meant to be ${intent === 'colour' ? 'in colour' : 'toned'}. Name it by itself to have it converted all the same.`;
}

const LINE_WORDS =
  'The settings say that it is line art, and it is stored in one bit, which keeps its edges sharp. Name it by itself to have it converted all the same.';

/** A curve is made for the tones of an original. */
const FITTED_ALREADY =
  'Its tones were fitted before, as its own record says: fitted once more they would lose contrast twice. Convert its original, or this one without a fit.';

/** Greys that no tone can be taken from. */
const TONELESS: ReadonlySet<Encoding> = new Set([
  'single-channel',
  'rgb-neutral',
  'black-only',
  'bilevel',
  'lab-neutral',
]);
const TONELESS_WORDS = 'It has no tone of its own that could be kept: name one with "--tone".';

/** The encoding is what is asked for, by a profile for such channels if by any, and nothing else is asked for. */
export function isRight(
  { encoding, space, profile, bits, format, orientation }: PictureFacts,
  wish: RemedyWish,
): boolean {
  return (
    encoding === wish.to &&
    (profile === null || profile.space === space) &&
    wish.curve === null &&
    wish.greyProfile === null &&
    (wish.to !== 'rgb-toned' || wish.tone.kind === 'own') &&
    (wish.bits === null || wish.bits === bits) &&
    (wish.format === null || wish.format === format) &&
    !(wish.upright && orientation !== 1)
  );
}

/**
 * Pictures that were found in a folder and are results of earlier conversions of others that were found: those are
 * pictures of the book no more than a print of one is. By their own record, and either its hash or their name; or by
 * what relinking remembers.
 * @param remembered pictures by their results
 */
export function copiesAmong(all: readonly Asked[], remembered: ReadonlyMap<string, string>): Set<Asked> {
  const hashes = new Set(all.map(({ pages }) => pages[0].sha256));
  const paths = new Set<string | null | undefined>(
    all.flatMap(({ path, link }) => [path, ...(link ? [link] : [])]),
  );
  const isOfAnother = ({ path, remedied }: Asked) =>
    (remedied !== null && (hashes.has(remedied.from) || paths.has(originalName(path)))) ||
    (remembered.get(path) !== path && paths.has(remembered.get(path)));
  return new Set(all.filter(asked => !asked.named && asked.replacedBy === null && isOfAnother(asked)));
}

/** What is to be done about a picture that an earlier conversion put in its place; null where it is none. */
export function afterReplacement(
  { replacedBy }: Asked,
  key: string,
): { do: 'skip' | 'refuse'; reason: string } | null {
  if (replacedBy === null) return null;
  if (replacedBy === key) return { do: 'skip', reason: 'It was converted so before.' };
  return {
    do: 'refuse',
    reason:
      'It was converted in place before, in another way, and a conversion of a conversion loses more than one of the original. Undo the earlier one first.',
  };
}
