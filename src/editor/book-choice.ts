// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from './book';
import { bookInFront } from './book-in-front';
import type { Books } from './books';
import { folderName } from './folder-name';
import { tellNoBook } from './start/no-book';

/** The book that is meant: the only one, that of the editor or page in front, or the one a person picks. None is told. */
export async function chosenBook(books: Books): Promise<Book | undefined> {
  if (!books.all.length) await books.find();
  if (!books.all.length) {
    void tellNoBook();
    return;
  }
  const inFront = bookInFront(books);
  if (inFront || books.all.length === 1) return inFront ?? books.all[0];
  const items = books.all.map(book => ({ label: folderName(book.root), book }));
  const choice = await vscode.window.showQuickPick(items, { placeHolder: vscode.l10n.t('Which book?') });
  return choice?.book;
}
