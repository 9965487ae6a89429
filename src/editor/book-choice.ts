// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Book } from './book';
import type { Books } from './books';
import { fileInFront } from './picture-in-front';

/** The book that is meant: the only one, that of the file in front, or the one a person picks. None is told. */
export async function chosenBook(books: Books): Promise<Book | undefined> {
  if (!books.all.length) await books.find();
  const t = vscode.l10n.t;
  if (!books.all.length) {
    const words = t(
      'There is no book here: put a file evengrey.json into the folder that has its pictures, with the process it will be printed on.',
    );
    void vscode.window.showInformationMessage(words);
    return;
  }
  const front = fileInFront();
  const inFront = front && books.of(front);
  if (inFront || books.all.length === 1) return inFront ?? books.all[0];
  const items = books.all.map(book => ({ label: vscode.workspace.asRelativePath(book.root), book }));
  const choice = await vscode.window.showQuickPick(items, { placeHolder: t('Which book?') });
  return choice?.book;
}
