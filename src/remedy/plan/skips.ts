// no-unit-test: test/remedy/plan/index.test.ts plans by it
import path from 'node:path';
import type { PictureFacts } from '../../shared/picture';
import type { RemedyEncoding, RemedyWish } from '../../shared/remedy';
import type { Asked } from './types';

/** Why nothing is to be done to a picture; null where there is. */
export function needsNothing(
  { named, intent, intentStated, remedied, pages: [facts] }: Asked,
  wish: RemedyWish,
): string | null {
  if (wish.curve !== null && remedied?.fitted) return FITTED_ALREADY;
  if (isRight(facts, wish)) return `It is ${wish.to} already.`;
  // a picture that was named is meant
  if (named) return null;
  if (!intentStated && facts.encoding === 'colour')
    return 'It is in colour, and nobody said that it is to be grey. Name the picture itself, or list it under "intent", "grey", in evengrey.json.';
  if (intent === 'grey' || intent === 'line') return null;
  if (intent === 'toned' && wish.to === 'rgb-toned') return null;
  return `The settings say that it is meant to be ${intent === 'colour' ? 'in colour' : 'toned'}. Name it by itself to have it converted all the same.`;
}

/** A curve is made for the tones of an original. */
const FITTED_ALREADY =
  'Its tones were fitted before, as its own record says: fitted once more they would lose contrast twice. Convert its original, or this one without a fit.';

/** The encoding is what is asked for, and nothing else is asked for. */
export function isRight({ encoding, bits, format, orientation }: PictureFacts, wish: RemedyWish): boolean {
  return (
    encoding === wish.to &&
    wish.curve === null &&
    wish.greyProfile === null &&
    (wish.to !== 'rgb-toned' || wish.tone.kind === 'own') &&
    (wish.bits === null || wish.bits === bits) &&
    (wish.format === null || wish.format === format) &&
    !(wish.upright && orientation !== 1)
  );
}

const ENCODINGS: RemedyEncoding[] = ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned'];

/**
 * Pictures that were found in a folder and are results of earlier conversions of others that were found: those are
 * pictures of the book no more than a print of one is. By their own record, and either its hash or their name.
 */
export function copiesAmong(all: readonly Asked[]): Set<Asked> {
  const hashes = new Set(all.map(({ pages }) => pages[0].sha256));
  const paths = new Set(all.map(({ path }) => path));
  const stems = new Set(all.map(({ path }) => withoutExtension(path)));
  const isOfAnother = ({ path, remedied }: Asked) =>
    remedied !== null &&
    (hashes.has(remedied.from) || originalNames(path).some(name => paths.has(name) || stems.has(name)));
  return new Set(all.filter(asked => !asked.named && asked.replacedBy === null && isOfAnother(asked)));
}

/** What the picture can have been called that this is the result of by its name; nothing where it is not called so. */
export function originalNames(file: string): string[] {
  const stem = withoutExtension(file);
  const encoding = ENCODINGS.find(each => stem.endsWith(`.${each}`));
  return encoding ? [stem.slice(0, -encoding.length - 1)] : [];
}

export const withoutExtension = (file: string) =>
  file.slice(0, file.length - path.posix.extname(file).length);

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
