import type { Comparison } from '../../shared/comparison';
import type { Place } from '../place';
import { shortly } from './words';

/** What is around a comparison: where its book lies, and how it was asked for. */
export interface Around {
  place: Place;
  /** Options that go before the settings of either revision, as they were given: `--process`, `offset-coated`. */
  conditions: readonly string[];
  /** The branch's own commit, where the head is a merge that a service made of it and no other clone has; absent: it is none. */
  branch?: string | null;
}

/**
 * The book by its folder in the repository; '' where it is the repository itself: what that is called on this machine is
 * nobody's business.
 */
export const bookOf = ({ place }: Pick<Around, 'place'>): string => place.folder.replace(/\/$/, '');

/**
 * Makes the page of the very same comparison, or of the branch where others have only that, from the root of the repository;
 * '' where no commit holds what was compared.
 */
export function pageCommand(
  { base, head, scope }: Pick<Comparison, 'base' | 'head' | 'scope'>,
  around: Around,
): string {
  if (head.folder) return '';
  const book = bookOf(around);
  return [
    ...['npx', '--no-install', 'evengrey', 'compare', shortly(base)],
    // what the other side had already is no change of the branch
    ...(around.branch ? [shortly({ commit: around.branch })] : [shortly(head), '--no-merge-base']),
    ...(book ? ['--book', word(book)] : []),
    ...(scope === 'book' ? ['--whole'] : []),
    ...around.conditions.map(word),
    ...['--format', 'html', '--output', 'review.html'],
  ].join(' ');
}

/** As a shell takes it for one word. */
function word(text: string): string {
  if (/^[\p{L}\p{N}_./-]+$/u.test(text)) return text;
  return /["$`\\!]/.test(text) ? `'${text.replace(/'/g, "'\\''")}'` : `"${text}"`;
}
