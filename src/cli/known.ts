// no-unit-test: test/cli/usage.test.ts runs the built program with every slip
import { startingWith, suggest } from '../book/settings/suggest';
import { Failure } from './failure';

/**
 * The word that an option was given, where it is one of those that it takes; undefined stays so.
 * @throws Failure with the one that was probably meant, or with all of them
 */
export function known(
  noun: string,
  word: string | undefined,
  words: readonly string[],
  option = noun,
): string | undefined {
  if (word === undefined || words.includes(word)) return word;
  throw new Failure(`--${option}: "${word}" is not a known ${noun}. ${meantOr(word, words)}`);
}

/** "Did you mean ...?" in the same words everywhere. */
export function meantOr(word: string, words: readonly string[]): string {
  // a number is meant as it stands: none is likely for another
  if (/^\d+$/.test(word)) return `Known: ${words.join(', ')}.`;
  const one = suggest(word, words);
  const meant = one === null ? startingWith(word, words) : [one];
  return meant.length ? `Did you mean "${meant.join('" or "')}"?` : `Known: ${words.join(', ')}.`;
}
