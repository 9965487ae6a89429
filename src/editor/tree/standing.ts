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

/** What stands beside the tree's name: how many pictures, and how many of them are to be put right. */
export function countsOf(books: readonly Book[]): string {
  const answers = books.flatMap(({ answer }) => (answer?.summary ? answer : []));
  if (!answers.length) return '';
  const sum = (of: (answer: (typeof answers)[number]) => number) =>
    answers.reduce((total, answer) => total + of(answer), 0);
  const [pictures, toPutRight] = [sum(of => of.summary!.pictures), sum(of => of.attention)];
  const t = vscode.l10n.t;
  const many = pictures === 1 ? t('1 picture') : t('{0} pictures', pictures);
  return toPutRight ? t('{0}, {1} to put right', many, toPutRight) : many;
}
