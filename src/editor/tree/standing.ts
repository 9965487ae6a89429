// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from '../book';
import type { BookTree } from './provider';

/** Why nothing is in the tree, for the words that stand there instead. */
export type Standing =
  | 'checking'
  | 'unchecked'
  | 'failed'
  | 'settings'
  | 'no-pictures'
  | 'filtered'
  | 'waived'
  | 'clean'
  | 'full';

/** How it stands with the books that the tree shows. */
export function standingOf(books: readonly Book[], tree: BookTree): Standing {
  if (books.length !== 1) return 'full';
  const [book] = books;
  const { state, answer } = book;
  if (tree.groups(book).length) return 'full';
  if (state.kind === 'failed' || state.kind === 'unchecked') return state.kind;
  if (!answer) return 'checking';
  if (!answer.summary) return 'settings';
  if (answer.summary.pictures === 0) return 'no-pictures';
  if (tree.filter) return 'filtered';
  return answer.summary.waived ? 'waived' : 'clean';
}

/** How many pictures a book has, and how many of them are to be put right; '' as long as nobody knows. */
export function countsOf({ answer }: Book): string {
  if (!answer?.summary) return '';
  const t = vscode.l10n.t;
  const { pictures } = answer.summary;
  const many = pictures === 1 ? t('1 picture') : t('{0} pictures', pictures);
  return answer.attention ? t('{0}, {1} to put right', many, answer.attention) : many;
}
