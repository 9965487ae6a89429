// no-unit-test: test/remedy/plan/index.test.ts plans by it
import { originalName } from '../../book/original-names';
import { type Loss, losesUnasked, TONELESS } from '../../rules/unasked';
import type { PictureFacts } from '../../shared/picture';
import type { RemedyWish } from '../../shared/remedy';
import type { Asked } from './types';

/**
 * Why nothing is to be done to a picture, and whether it is to be sent as it is; null where there is. `loses`: what would
 * go, which nobody said may.
 */
export function needsNothing(
  asked: Asked,
  wish: RemedyWish,
): { reason: string; isRight: boolean; loses?: Loss } | null {
  const { meant, remedied, pages } = asked;
  const [facts] = pages;
  if (wish.curve !== null && remedied?.fitted) return { reason: FITTED_ALREADY, isRight: false };
  if (isRight(facts, wish)) return { reason: `It is ${wish.to} already.`, isRight: true };
  if (wish.to === 'rgb-toned' && wish.tone.kind !== 'stated' && TONELESS.has(facts.encoding))
    return { reason: TONELESS_WORDS, isRight: facts.encoding === 'bilevel' && !meant };
  const loss = meant ? null : lossOf(asked, wish);
  return loss && { reason: lossWords(loss, asked), isRight: loss === 'line', loses: loss };
}

/** What would go unasked. */
function lossOf(asked: Asked, { to, below }: RemedyWish): Loss | null {
  const { intentStated, pages } = asked;
  const [facts] = pages;
  const loss = losesUnasked({ ...asked, facts });
  const staysToned =
    to === 'rgb-toned' || (!intentStated && below !== null && (facts.chroma?.mean ?? 0) >= below);
  return loss === 'tone' && staysToned ? null : loss;
}

function lossWords(loss: Loss, { intentStated }: Asked): string {
  const anyway = 'Name the picture itself, or ask for all ("--all"), to have it converted all the same';
  if (intentStated) return `The settings say that it is ${STATED[loss]}. ${anyway}.`;
  return `${UNSTATED[loss]}, and nobody said that it is to be grey. ${anyway}, or say under "intent" in evengrey.json what it is meant to be.`;
}

const STATED: Record<Loss, string> = {
  colour: 'meant to be in colour',
  tone: 'meant to be toned',
  line: 'line art, and it is stored in one bit, which keeps its edges sharp',
};
const UNSTATED: Record<Loss, string> = {
  colour: 'It is in colour',
  tone: 'It has a strong tone, which may be meant, as a sepia toning is',
  line: 'It is stored in one bit, which keeps the edges of line art sharp',
};

/** A curve is made for the tones of an original. */
const FITTED_ALREADY =
  'Its tones were fitted before, as its own record says: fitted once more they would lose contrast twice. Convert its original, or this one without a fit.';

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
